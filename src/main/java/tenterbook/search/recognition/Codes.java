package tenterbook.search.recognition;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Descriptions shortened to 64 bits each, so that those of a whole archive fit into memory: each bit says on which side of a
 * plane through the middle a description lies (Charikar, 2002). The planes are always the same.
 */
final class Codes {
    /** Places of a photograph that are kept in this way: 3 KB. */
    static final int MOST = 384;

    private static final float[][] PLANES = planes();

    private Codes() {}

    /** The weights of each kind of number (sums, and sums without sign) add up to nothing, so that the planes lie in the middle. */
    private static float[][] planes() {
        Random random = new Random(20_240_611);
        float[][] planes = new float[Long.SIZE][PhotoFeatures.NUMBERS];
        for (float[] plane : planes) {
            float[] sum = new float[4];
            for (int i = 0; i < plane.length; i++) {
                plane[i] = (float) random.nextGaussian();
                sum[i % 4] += plane[i];
            }
            for (int i = 0; i < plane.length; i++) {
                plane[i] -= 4 * sum[i % 4] / plane.length;
            }
        }
        return planes;
    }

    /** Of at most so many places, the largest first. */
    static long[] of(PhotoFeatures features, int most) {
        return IntStream.range(0, features.count)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -features.radius[i]))
                .limit(most)
                .mapToLong(i -> features.codes[i])
                .toArray();
    }

    /** The lowest bit is set where the place is light. */
    static long code(PhotoFeatures features, int place) {
        long code = 0;
        for (int bit = 1; bit < Long.SIZE; bit++) {
            float side = 0;
            for (int i = 0; i < PhotoFeatures.NUMBERS; i++) {
                side += PLANES[bit][i] * features.numbers[PhotoFeatures.NUMBERS * place + i];
            }
            code |= side > 0 ? 1L << bit : 0;
        }
        return code | features.light[place];
    }

    static byte[] bytes(long[] codes) {
        ByteBuffer out = ByteBuffer.allocate(Long.BYTES * codes.length);
        out.asLongBuffer().put(codes);
        return out.array();
    }

    static long[] of(byte[] bytes) {
        long[] codes = new long[bytes.length / Long.BYTES];
        ByteBuffer.wrap(bytes).asLongBuffer().get(codes);
        return codes;
    }

    /** Light places first. */
    static long[] sorted(long[] codes) {
        long[] sorted = new long[codes.length];
        int at = 0;
        for (int light = 1; light >= 0; light--) {
            for (long code : codes) {
                if ((code & 1) == light) {
                    sorted[at++] = code;
                }
            }
        }
        return Arrays.copyOf(sorted, at);
    }

    /** How many are of light places. */
    static int light(long[] codes) {
        return (int) Arrays.stream(codes).filter(code -> (code & 1) == 1).count();
    }
}
