package tenterbook.imaging.decoder;

import java.time.Duration;

/**
 * What one call of a decoder may take.
 *
 * @param time as the clock on the wall runs; the decoder is ended after it
 * @param outputBytes of all that it writes
 * @param memoryBytes of address space, where the system can limit it (Linux, {@code prlimit} of util-linux)
 */
public record DecoderBounds(Duration time, long outputBytes, long memoryBytes) {
    /** Enough for 64 million pixels of 16 bits: about 400 MB of pixels. */
    public static final DecoderBounds USUAL = new DecoderBounds(Duration.ofSeconds(60), 512L << 20, 2L << 30);
}
