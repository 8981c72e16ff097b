package tenterbook.search.recognition;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Descriptions shortened to 64 bits each, so that those of a whole archive fit into memory: each bit says on which side of a
 * plane through the middle a description lies (Charikar, 2002). The planes are always the same.
 */
final class Codes {
    /**
     * Places of a photograph that are kept in this way: 4 KB. Half are its largest, half are of any size, so that a close view
     * finds the small places of a whole cloth. With the largest alone, the right whole cloth was among the first 16 of 120 for 6
     * of 25 close views of the tuning set; in this way for 25.
     */
    private static final int MOST = 512;

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

    /** Of a picture's largest places, at most so many. */
    static long[] ofLargest(PhotoFeatures features, int most) {
        return largest(features).limit(most).mapToLong(i -> features.codes[i]).toArray();
    }

    /** Those of a photograph that are kept. */
    static long[] kept(PhotoFeatures features) {
        List<Integer> any =
                new ArrayList<>(IntStream.range(0, features.count).boxed().toList());
        Collections.shuffle(any, new Random(1));
        return Stream.concat(largest(features).limit(MOST / 2), any.stream())
                .distinct()
                .limit(MOST)
                .mapToLong(i -> features.codes[i])
                .toArray();
    }

    private static Stream<Integer> largest(PhotoFeatures features) {
        return IntStream.range(0, features.count).boxed().sorted(Comparator.comparingDouble(i -> -features.radius[i]));
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
