package tenterbook.search.recognition;

import java.util.Arrays;

/** Places of two pictures that look alike: each is the other's nearest, and clearly nearer than the next. */
final class Matches {
    /** The square of the ratio of distances (0.8) up to which the nearest is clearly nearer (Lowe, 2004). */
    private static final double CLEARLY = 0.64;

    /** Descriptions whose codes differ in more bits are not compared: nearly all of those of the same place differ in fewer. */
    private static final int NEAR = 20;

    final int count;
    final int[] query;
    final int[] photo;

    private Matches(int count, int[] query, int[] photo) {
        this.count = count;
        this.query = query;
        this.photo = photo;
    }

    /** Descriptions of one picture laid out for comparing with many others: light places first. */
    static final class Side {
        final PhotoFeatures features;
        private final int[] place;
        private final int light;
        private final short[] numbers;
        private final int[] squared;
        private final long[] codes;

        Side(PhotoFeatures features) {
            this.features = features;
            place = new int[features.count];
            int at = 0;
            int lit = 0;
            for (int kind = 1; kind >= 0; kind--) {
                for (int i = 0; i < place.length; i++) {
                    if (features.light[i] == kind) {
                        place[at++] = i;
                        lit += kind;
                    }
                }
            }
            light = lit;
            numbers = new short[features.numbers.length];
            squared = new int[place.length];
            codes = new long[place.length];
            for (int i = 0; i < codes.length; i++) {
                codes[i] = features.codes[place[i]];
            }
            for (int i = 0; i < numbers.length; i++) {
                int from = PhotoFeatures.NUMBERS * place[i / PhotoFeatures.NUMBERS] + i % PhotoFeatures.NUMBERS;
                numbers[i] = features.numbers[from];
                squared[i / PhotoFeatures.NUMBERS] += numbers[i] * numbers[i];
            }
        }
    }

    /** Nearest and next of each place, in the order of {@link Side}. */
    private static final class Nearest {
        final int[] at;
        final int[] apart;
        final int[] next;

        Nearest(int count) {
            at = new int[count];
            apart = new int[count];
            next = new int[count];
            Arrays.fill(at, -1);
            Arrays.fill(apart, Integer.MAX_VALUE);
            Arrays.fill(next, Integer.MAX_VALUE);
        }

        void take(int place, int other, int distance) {
            if (distance < apart[place]) {
                next[place] = apart[place];
                apart[place] = distance;
                at[place] = other;
            } else if (distance < next[place]) {
                next[place] = distance;
            }
        }
    }

    static Matches between(Side query, Side photo) {
        Nearest there = new Nearest(query.place.length);
        Nearest back = new Nearest(photo.place.length);
        for (int q = 0; q < query.place.length; q++) {
            boolean light = q < query.light;
            long code = query.codes[q];
            int to = light ? photo.light : photo.place.length;
            for (int p = light ? 0 : photo.light; p < to; p++) {
                if (Long.bitCount(code ^ photo.codes[p]) <= NEAR) {
                    int distance =
                            query.squared[q] + photo.squared[p] - 2 * product(query.numbers, q, photo.numbers, p);
                    there.take(q, p, distance);
                    back.take(p, q, distance);
                }
            }
        }
        return mutual(query, photo, there, back);
    }

    private static Matches mutual(Side query, Side photo, Nearest there, Nearest back) {
        int[] from = new int[there.at.length];
        int[] to = new int[there.at.length];
        int count = 0;
        for (int q = 0; q < there.at.length; q++) {
            int p = there.at[q];
            if (p >= 0 && back.at[p] == q && there.apart[q] < CLEARLY * there.next[q]) {
                from[count] = query.place[q];
                to[count++] = photo.place[p];
            }
        }
        return new Matches(count, from, to);
    }

    private static int product(short[] a, int i, short[] b, int j) {
        int from = i * PhotoFeatures.NUMBERS;
        int other = j * PhotoFeatures.NUMBERS;
        int sum = 0;
        for (int k = 0; k < PhotoFeatures.NUMBERS; k++) {
            sum += a[from + k] * b[other + k];
        }
        return sum;
    }
}
