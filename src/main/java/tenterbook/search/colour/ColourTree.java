package tenterbook.search.colour;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The colours of one segment's pieces, near ones side by side: halved again and again along the widest of L, a and b until few
 * are left together, each part with the box around it. Never changes; about 53 bytes a colour.
 *
 * <p>Parts are numbered as in a heap: 1 is the whole, the halves of n are 2n and 2n + 1.
 */
public final class ColourTree {
    private static final int LEAF = 48;
    /** A step of lightness weighs more than one of chroma, which CIEDE2000 divides by SC or SH. */
    private static final double LIGHTNESS_WEIGHS = 1.5;

    public final double[] lightness;
    public final double[] a;
    public final double[] b;
    /** NaN where unknown or not to be counted. */
    public final double[] share;
    /** The document each colour belongs to. */
    public final int[] doc;
    /** The colours of document d are at {@code at[start[d]]} up to {@code at[start[d + 1]]}, in the piece's order. */
    public final int[] start;

    final int[] at;
    /** Leaf of each colour, in that order, counted from {@link #firstLeaf}. */
    final int[] leaf;
    /**
     * Weight of each colour in its palette, in that order: its part of the sum of the known shares, 0 where its own is unknown; the
     * same for all where none is known.
     */
    final double[] weight;
    /** Six numbers for each part, as {@link BoxBound#box} takes them. */
    final double[] boxes;

    final byte[] corners;
    /** Parts from this number on are not halved. */
    final int firstLeaf;

    /**
     * @param packed L, a, b, share of each colour, document after document
     * @param start first colour of each document, and the count at the end
     */
    public ColourTree(double[] packed, int[] start) {
        int colours = start[start.length - 1];
        this.start = start;
        int leaves = 1;
        while ((long) leaves * LEAF < colours) {
            leaves *= 2;
        }
        firstLeaf = leaves;
        boxes = new double[12 * leaves];
        corners = new byte[2 * leaves];
        lightness = new double[colours];
        a = new double[colours];
        b = new double[colours];
        share = new double[colours];
        doc = new int[colours];
        at = new int[colours];
        leaf = new int[colours];
        weight = new double[colours];
        int[] order = IntStream.range(0, colours).toArray();
        halve(packed, order, 1, 0, colours);
        for (int d = 0; d + 1 < start.length; d++) {
            weigh(packed, start[d], start[d + 1]);
            Arrays.fill(at, start[d], start[d + 1], d);
        }
        for (int i = 0; i < colours; i++) {
            int from = order[i];
            lightness[i] = packed[4 * from];
            a[i] = packed[4 * from + 1];
            b[i] = packed[4 * from + 2];
            share[i] = packed[4 * from + 3];
            doc[i] = at[from];
            at[from] = i;
        }
    }

    /** The colours that each document has in {@code one}; those of {@code other} where it has none there. Same documents in both. */
    public static ColourTree firstOf(ColourTree one, ColourTree other) {
        int[] start = new int[one.start.length];
        double[] packed = new double[4 * (one.size() + other.size())];
        for (int d = 0; d + 1 < start.length; d++) {
            ColourTree from = one.start[d] < one.start[d + 1] ? one : other;
            start[d + 1] = start[d];
            for (int k = from.start[d]; k < from.start[d + 1]; k++) {
                int i = from.at[k];
                int to = 4 * start[d + 1]++;
                packed[to] = from.lightness[i];
                packed[to + 1] = from.a[i];
                packed[to + 2] = from.b[i];
                packed[to + 3] = from.share[i];
            }
        }
        return new ColourTree(packed, start);
    }

    public int size() {
        return doc.length;
    }

    private void weigh(double[] packed, int from, int to) {
        double sum = 0;
        for (int k = from; k < to; k++) {
            sum += packed[4 * k + 3] > 0 ? packed[4 * k + 3] : 0;
        }
        for (int k = from; k < to; k++) {
            double its = packed[4 * k + 3];
            weight[k] = sum == 0 ? 1.0 / (to - from) : its > 0 ? its / sum : 0;
        }
    }

    private void halve(double[] packed, int[] order, int part, int from, int to) {
        int box = 6 * part;
        for (int axis = 0; axis < 3; axis++) {
            double lo = Double.POSITIVE_INFINITY;
            double hi = Double.NEGATIVE_INFINITY;
            for (int i = from; i < to; i++) {
                double value = packed[4 * order[i] + axis];
                lo = Math.min(lo, value);
                hi = Math.max(hi, value);
            }
            boxes[box + 2 * axis] = lo;
            boxes[box + 2 * axis + 1] = hi;
        }
        corners[part] = (byte) (to > from ? BoxBound.corners(boxes, box) : 0);
        if (part >= firstLeaf) {
            for (int i = from; i < to; i++) {
                leaf[order[i]] = part - firstLeaf;
            }
            return;
        }
        double L = (boxes[box + 1] - boxes[box]) * LIGHTNESS_WEIGHS;
        double aWide = boxes[box + 3] - boxes[box + 2];
        double bWide = boxes[box + 5] - boxes[box + 4];
        int axis = L >= aWide && L >= bWide ? 0 : aWide >= bWide ? 1 : 2;
        int middle = middle(from, to);
        select(packed, order, axis, from, to - 1, middle);
        halve(packed, order, 2 * part, from, middle);
        halve(packed, order, 2 * part + 1, middle, to);
    }

    /** The first colour of a part. */
    int begin(int part) {
        int from = 0;
        int to = size();
        for (int bit = Integer.highestOneBit(part) >> 1; bit > 0; bit >>= 1) {
            int middle = middle(from, to);
            from = (part & bit) == 0 ? from : middle;
            to = (part & bit) == 0 ? middle : to;
        }
        return from;
    }

    /** The one after the last colour of a part. */
    int end(int part) {
        boolean last = (part & part + 1) == 0;
        return last ? size() : begin(part + 1);
    }

    /** Where a part of colours is halved; every walk through the tree uses this. */
    static int middle(int from, int to) {
        return (from + to) >>> 1;
    }

    /** Puts the value that belongs at {@code middle} there, smaller ones before and greater ones after it (Hoare). */
    private static void select(double[] packed, int[] order, int axis, int first, int last, int middle) {
        int from = first;
        int to = last;
        while (from < to) {
            double pivot = packed[4 * order[(from + to) >>> 1] + axis];
            int i = from;
            int j = to;
            while (i <= j) {
                while (packed[4 * order[i] + axis] < pivot) {
                    i++;
                }
                while (packed[4 * order[j] + axis] > pivot) {
                    j--;
                }
                if (i <= j) {
                    int kept = order[i];
                    order[i++] = order[j];
                    order[j--] = kept;
                }
            }
            if (middle <= j) {
                to = j;
            } else if (middle >= i) {
                from = i;
            } else {
                return;
            }
        }
    }
}
