package tenterbook.imaging;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import tenterbook.colour.palette.Pixels;
import tenterbook.imaging.file.MediaType;
import tenterbook.imaging.file.PhotoFactsReader;
import tenterbook.imaging.pixels.PhotoReader;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/**
 * Opens an original for measuring: upright, reduced in linear light to at most 2048 pixels, in sRGB and, where its profile is of
 * wider colours, with its own numbers beside them, so that nothing is clipped. Never a preview,
 * whose compression changes colours. Each opening decodes the file anew and takes about 100 MB for the time.
 */
public final class PhotoMeasure {
    static final int LONG_EDGE = 2048;

    private final Originals originals;

    public PhotoMeasure(Originals originals) {
        this.originals = originals;
    }

    /**
     * A photograph ready for measuring.
     *
     * @param pixels upright; places on it are in parts of its width and height, as on every preview
     * @param notes what a person should know of the decoding, each in a sentence
     */
    public record Opened(Pixels pixels, List<String> notes) {
        public Opened {
            notes = List.copyOf(notes);
        }
    }

    /**
     * @return empty if the original is not kept here or cannot be decoded
     * @throws IOException if the file cannot be read
     */
    public Optional<Opened> open(Digest photo) throws IOException {
        Optional<Path> original = originals.find(photo);
        if (original.isEmpty()) {
            return Optional.empty();
        }
        return opened(original.get());
    }

    /**
     * Of a file that is an original, or is to be one.
     *
     * @return empty if it cannot be decoded
     * @throws IOException if it cannot be read or is no picture
     */
    public static Optional<Opened> opened(Path path) throws IOException {
        Optional<MediaType> type = MediaType.of(path);
        if (type.isEmpty()) {
            throw new IOException(
                    Message.of("photo.not-measured", "file", path.getFileName()).inEnglish());
        }
        PhotoReader.Reading reading = DecodePermits.take(
                () -> new PhotoReader().read(path, type.get(), PhotoFactsReader.read(path), LONG_EDGE));
        return reading.measured().map(pixels -> new Opened(pixels, reading.notes()));
    }
}
