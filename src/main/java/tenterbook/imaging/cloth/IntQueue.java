package tenterbook.imaging.cloth;

/** Cells waiting for their turn, each at most once, first come first served. */
final class IntQueue {
    private static final int NOT_THERE = -1;
    private static final int LAST = -2;

    private final int[] after;
    private int first = LAST;
    private int last = LAST;

    /** @param size cells are 0 or more and below this */
    IntQueue(int size) {
        after = new int[size];
        java.util.Arrays.fill(after, NOT_THERE);
    }

    /** Puts a cell at the end; one that waits already keeps its place. */
    void add(int cell) {
        if (after[cell] != NOT_THERE) {
            return;
        }
        after[cell] = LAST;
        if (first == LAST) {
            first = cell;
        } else {
            after[last] = cell;
        }
        last = cell;
    }

    /** The one whose turn it is, or -1. */
    int first() {
        return first == LAST ? -1 : first;
    }

    void removeFirst() {
        int next = after[first];
        after[first] = NOT_THERE;
        first = next;
    }
}
