package tenterbook.search;

import java.util.Arrays;
import org.apache.lucene.util.FixedBitSet;
import tenterbook.colour.Ciede2000;
import tenterbook.colour.Lab;

/**
 * Goes through a tree of colours from near to far and hands out documents, each once, in order of their nearest colour. What waits
 * is a part (by the least its box can be), a colour (by the least its bound allows) or a colour compared (by its distance); when
 * a compared one is first in line, nothing nearer is left. Only so many are compared as it takes.
 */
final class NearestFirst {
    private final ColourTree tree;
    private final Lab asked;
    private final BoxBound bound;
    private final FixedBitSet wanted;
    private final double limit2;
    private double[] keys = new double[256];
    /** n for part n; −1 − 2i for colour i; −2 − 2i for colour i compared. */
    private int[] what = new int[256];

    private int waiting;
    private int doc;
    private double distance;

    /**
     * @param wanted documents to hand out; each is cleared when it was
     * @param within no document farther than this is handed out
     */
    NearestFirst(ColourTree tree, Lab asked, double within, FixedBitSet wanted) {
        this.tree = tree;
        this.asked = asked;
        this.bound = new BoxBound(asked.lightness(), asked.a(), asked.b());
        this.wanted = wanted;
        this.limit2 = within * within + ColourBound.SLACK;
        if (tree.size() > 0) {
            push(0, 1);
        }
    }

    /** Goes on to the next document; false where there is none. */
    boolean next() {
        while (waiting > 0) {
            int first = pop();
            if (first > 0) {
                part(first);
            } else if ((first & 1) != 0) {
                int i = (-1 - first) / 2;
                if (wanted.get(tree.doc[i])) {
                    double difference = exact(i);
                    push(difference * difference, -2 - 2 * i);
                }
            } else {
                int i = (-2 - first) / 2;
                if (wanted.get(tree.doc[i])) {
                    doc = tree.doc[i];
                    distance = exact(i);
                    wanted.clear(doc);
                    return true;
                }
            }
        }
        return false;
    }

    private double exact(int i) {
        return Ciede2000.difference(asked.lightness(), asked.a(), asked.b(), tree.lightness[i], tree.a[i], tree.b[i]);
    }

    int doc() {
        return doc;
    }

    /** ΔE00 of its nearest colour. */
    double distance() {
        return distance;
    }

    private void part(int part) {
        int from = tree.begin(part);
        int to = tree.end(part);
        if (part < tree.firstLeaf) {
            int middle = ColourTree.middle(from, to);
            half(2 * part, from, middle);
            half(2 * part + 1, middle, to);
            return;
        }
        bound.box(tree.boxes, 6 * part, tree.corners[part], Double.POSITIVE_INFINITY);
        for (int i = from; i < to; i++) {
            if (wanted.get(tree.doc[i])) {
                bound.colour(tree.lightness[i], tree.a[i], tree.b[i], tree.chroma[i], limit2);
                if (bound.least2 <= limit2) {
                    push(bound.least2 - ColourBound.SLACK, -1 - 2 * i);
                }
            }
        }
    }

    private void half(int part, int from, int to) {
        if (from < to) {
            bound.box(tree.boxes, 6 * part, tree.corners[part], limit2);
            if (bound.least2 <= limit2) {
                push(bound.least2 - ColourBound.SLACK, part);
            }
        }
    }

    private void push(double key, int id) {
        if (waiting == keys.length) {
            keys = Arrays.copyOf(keys, 2 * waiting);
            what = Arrays.copyOf(what, 2 * waiting);
        }
        int at = waiting++;
        while (at > 0 && keys[(at - 1) / 2] > key) {
            keys[at] = keys[(at - 1) / 2];
            what[at] = what[(at - 1) / 2];
            at = (at - 1) / 2;
        }
        keys[at] = key;
        what[at] = id;
    }

    private int pop() {
        int first = what[0];
        double key = keys[--waiting];
        int id = what[waiting];
        int at = 0;
        for (int child = 1; child < waiting; child = 2 * at + 1) {
            if (child + 1 < waiting && keys[child + 1] < keys[child]) {
                child++;
            }
            if (keys[child] >= key) {
                break;
            }
            keys[at] = keys[child];
            what[at] = what[child];
            at = child;
        }
        keys[at] = key;
        what[at] = id;
        return first;
    }
}
