package tenterbook.imaging.cloth;

import java.util.Arrays;

/**
 * The cheapest division of a grid of cells into two sides, where each cell has a price for either side and each two neighbours,
 * of eight, a price for being parted: a minimum cut, found by the search trees of Boykov and Kolmogorov 2004, "An experimental
 * comparison of min-cut/max-flow algorithms for energy minimization in vision". Exact for its whole-number prices.
 */
final class GridCut {
    static final int DIRECTIONS = 8;
    private static final int[] ACROSS = {1, -1, 0, 0, 1, -1, 1, -1};
    private static final int[] DOWN = {0, 0, 1, -1, 1, -1, -1, 1};
    private static final byte NONE = -1;
    private static final byte ROOT = -2;
    private static final byte ORPHAN = -3;

    private final int width;
    private final int height;
    /** What can still flow from a cell in each direction; direction {@code d ^ 1} leads back. */
    private final int[] room;

    private final int[] step = new int[DIRECTIONS];
    /** Above 0 what can still come from the source, below 0 what can still go to the sink. */
    private final int[] terminal;

    private final byte[] parent;
    private final boolean[] ofSink;
    private final int[] stamp;
    private final int[] depth;
    private final IntQueue active;
    private final IntQueue orphans;
    private int time;

    GridCut(int width, int height) {
        this.width = width;
        this.height = height;
        int cells = width * height;
        room = new int[DIRECTIONS * cells];
        terminal = new int[cells];
        parent = new byte[cells];
        Arrays.fill(parent, NONE);
        ofSink = new boolean[cells];
        stamp = new int[cells];
        depth = new int[cells];
        active = new IntQueue(cells);
        orphans = new IntQueue(cells);
        for (int d = 0; d < DIRECTIONS; d++) {
            step[d] = DOWN[d] * width + ACROSS[d];
        }
    }

    /** The cell next to one, or -1 outside the grid. */
    int beside(int cell, int direction) {
        int x = cell % width + ACROSS[direction];
        int y = cell / width + DOWN[direction];
        return x < 0 || y < 0 || x >= width || y >= height ? -1 : cell + step[direction];
    }

    /** Prices of 0 or more for a cell to lie on the source's or on the sink's side. */
    void prices(int cell, int onSourceSide, int onSinkSide) {
        terminal[cell] = onSinkSide - onSourceSide;
    }

    /** The price, 0 or more, of parting a cell from the one beside it, which must lie in the grid. */
    void parting(int cell, int direction, int price) {
        room[DIRECTIONS * cell + direction] = price;
        room[DIRECTIONS * (cell + step[direction]) + (direction ^ 1)] = price;
    }

    /** Which cells lie on the source's side; those that cost the same on either are on the sink's. */
    boolean[] cut() {
        for (int cell = 0; cell < terminal.length; cell++) {
            if (terminal[cell] != 0) {
                ofSink[cell] = terminal[cell] < 0;
                parent[cell] = ROOT;
                depth[cell] = 1;
                active.add(cell);
            }
        }
        for (int cell = active.first(); cell >= 0; cell = active.first()) {
            if (parent[cell] == NONE) {
                active.removeFirst();
                continue;
            }
            int meeting = grow(cell);
            time++;
            if (meeting < 0) {
                active.removeFirst();
            } else {
                augment(meeting / DIRECTIONS, meeting % DIRECTIONS);
                for (int orphan = orphans.first(); orphan >= 0; orphan = orphans.first()) {
                    orphans.removeFirst();
                    adopt(orphan);
                }
            }
        }
        boolean[] source = new boolean[terminal.length];
        for (int cell = 0; cell < source.length; cell++) {
            source[cell] = parent[cell] != NONE && !ofSink[cell];
        }
        return source;
    }

    /** What can flow along the tree between a cell and the one beside it: away from the source, towards the sink. */
    private int along(int cell, int direction, boolean towardsBeside) {
        return towardsBeside
                ? room[DIRECTIONS * cell + direction]
                : room[DIRECTIONS * (cell + step[direction]) + (direction ^ 1)];
    }

    /** Takes free neighbours into the cell's tree; where it meets the other tree, cell and direction of that edge, else -1. */
    private int grow(int cell) {
        boolean sink = ofSink[cell];
        for (int d = 0; d < DIRECTIONS; d++) {
            int next = beside(cell, d);
            if (next < 0 || along(cell, d, !sink) == 0) {
                continue;
            }
            if (parent[next] == NONE) {
                ofSink[next] = sink;
                hang(next, d ^ 1, cell);
                active.add(next);
            } else if (ofSink[next] != sink) {
                return sink ? DIRECTIONS * next + (d ^ 1) : DIRECTIONS * cell + d;
            } else if (stamp[next] <= stamp[cell] && depth[next] > depth[cell]) {
                hang(next, d ^ 1, cell);
            }
        }
        return -1;
    }

    private void hang(int cell, int direction, int under) {
        parent[cell] = (byte) direction;
        stamp[cell] = stamp[under];
        depth[cell] = depth[under] + 1;
    }

    /** Sends as much as can flow from source to sink over one edge that joins the trees. */
    private void augment(int from, int direction) {
        int to = from + step[direction];
        int flow = room[DIRECTIONS * from + direction];
        for (int cell = from; ; cell += step[parent[cell]]) {
            if (parent[cell] == ROOT) {
                flow = Math.min(flow, terminal[cell]);
                break;
            }
            flow = Math.min(flow, along(cell, parent[cell], false));
        }
        for (int cell = to; ; cell += step[parent[cell]]) {
            if (parent[cell] == ROOT) {
                flow = Math.min(flow, -terminal[cell]);
                break;
            }
            flow = Math.min(flow, along(cell, parent[cell], true));
        }
        push(from, direction, flow);
        drain(from, flow, false);
        drain(to, flow, true);
    }

    private void push(int cell, int direction, int flow) {
        room[DIRECTIONS * cell + direction] -= flow;
        room[DIRECTIONS * (cell + step[direction]) + (direction ^ 1)] += flow;
    }

    private void drain(int start, int flow, boolean sink) {
        int cell = start;
        while (parent[cell] != ROOT) {
            int d = parent[cell];
            int above = cell + step[d];
            if (sink) {
                push(cell, d, flow);
            } else {
                push(above, d ^ 1, flow);
            }
            if (along(cell, d, sink) == 0) {
                parent[cell] = ORPHAN;
                orphans.add(cell);
            }
            cell = above;
        }
        terminal[cell] += sink ? flow : -flow;
        if (terminal[cell] == 0) {
            parent[cell] = ORPHAN;
            orphans.add(cell);
        }
    }

    /** Gives a cell another parent that still leads to its root, the nearest, or sets it free. */
    private void adopt(int cell) {
        boolean sink = ofSink[cell];
        int best = -1;
        int least = Integer.MAX_VALUE;
        for (int d = 0; d < DIRECTIONS; d++) {
            int next = beside(cell, d);
            if (next >= 0 && ofSink[next] == sink && parent[next] != NONE && along(cell, d, sink) > 0) {
                int far = toRoot(next);
                if (far < least) {
                    least = far;
                    best = d;
                }
            }
        }
        if (best >= 0) {
            parent[cell] = (byte) best;
            stamp[cell] = time;
            depth[cell] = least + 1;
            return;
        }
        parent[cell] = NONE;
        for (int d = 0; d < DIRECTIONS; d++) {
            int next = beside(cell, d);
            if (next >= 0 && ofSink[next] == sink && parent[next] != NONE) {
                if (along(cell, d, sink) > 0) {
                    active.add(next);
                }
                if (parent[next] >= 0 && next + step[parent[next]] == cell) {
                    parent[next] = ORPHAN;
                    orphans.add(next);
                }
            }
        }
    }

    /** Depth of a cell below its root, noted on the way; the greatest number where it leads to an orphan. */
    private int toRoot(int start) {
        int far = 0;
        for (int cell = start; ; cell += step[parent[cell]]) {
            if (stamp[cell] == time) {
                far += depth[cell];
                break;
            }
            far++;
            if (parent[cell] == ROOT) {
                stamp[cell] = time;
                depth[cell] = 1;
                break;
            }
            if (parent[cell] == ORPHAN) {
                return Integer.MAX_VALUE;
            }
        }
        int left = far;
        for (int cell = start; stamp[cell] != time; cell += step[parent[cell]]) {
            stamp[cell] = time;
            depth[cell] = left--;
        }
        return far;
    }
}
