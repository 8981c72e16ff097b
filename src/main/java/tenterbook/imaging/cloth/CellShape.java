package tenterbook.imaging.cloth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** One connected area of a grid of cells without holes, and its measures; lengths in sides of a cell. */
final class CellShape {
    private static final int[] ACROSS = {1, 0, -1, 0};
    private static final int[] DOWN = {0, 1, 0, -1};

    final int width;
    final int height;
    final boolean[] inside;
    final int cells;

    private CellShape(int width, int height, boolean[] inside, int cells) {
        this.width = width;
        this.height = height;
        this.inside = inside;
        this.cells = cells;
    }

    /** The largest connected part, with what it encloses; cells that meet at a corner only are not connected. */
    static CellShape largest(int width, int height, boolean[] wanted) {
        boolean[] best = new boolean[wanted.length];
        int most = 0;
        boolean[] seen = new boolean[wanted.length];
        int[] queue = new int[wanted.length];
        for (int start = 0; start < wanted.length; start++) {
            int size = seen[start] || !wanted[start] ? 0 : flood(width, height, wanted, start, seen, queue);
            if (size > most) {
                most = size;
                Arrays.fill(best, false);
                for (int i = 0; i < size; i++) {
                    best[queue[i]] = true;
                }
            }
        }
        return filled(width, height, best);
    }

    private static CellShape filled(int width, int height, boolean[] part) {
        boolean[] other = new boolean[part.length];
        for (int i = 0; i < part.length; i++) {
            other[i] = !part[i];
        }
        boolean[] outside = new boolean[part.length];
        int[] queue = new int[part.length];
        for (int i = 0; i < part.length; i++) {
            if (onFrame(width, height, i) && other[i] && !outside[i]) {
                flood(width, height, other, i, outside, queue);
            }
        }
        boolean[] inside = new boolean[part.length];
        int cells = 0;
        for (int i = 0; i < part.length; i++) {
            inside[i] = !outside[i];
            cells += inside[i] ? 1 : 0;
        }
        return new CellShape(width, height, inside, cells);
    }

    private static int flood(int width, int height, boolean[] wanted, int start, boolean[] seen, int[] queue) {
        int tail = 0;
        queue[tail++] = start;
        seen[start] = true;
        for (int head = 0; head < tail; head++) {
            for (int d = 0; d < 4; d++) {
                int next = beside(width, height, queue[head], d);
                if (next >= 0 && wanted[next] && !seen[next]) {
                    seen[next] = true;
                    queue[tail++] = next;
                }
            }
        }
        return tail;
    }

    private static int beside(int width, int height, int cell, int direction) {
        int x = cell % width + ACROSS[direction];
        int y = cell / width + DOWN[direction];
        return x < 0 || y < 0 || x >= width || y >= height ? -1 : y * width + x;
    }

    private static boolean onFrame(int width, int height, int cell) {
        int x = cell % width;
        int y = cell / width;
        return x == 0 || y == 0 || x == width - 1 || y == height - 1;
    }

    boolean at(int x, int y) {
        return x >= 0 && y >= 0 && x < width && y < height && inside[y * width + x];
    }

    double share() {
        return (double) cells / inside.length;
    }

    /** Cells in both, of the cells in either; 0 where both are empty. */
    double overlap(CellShape other) {
        int both = 0;
        int either = 0;
        for (int i = 0; i < inside.length; i++) {
            both += inside[i] && other.inside[i] ? 1 : 0;
            either += inside[i] || other.inside[i] ? 1 : 0;
        }
        return either == 0 ? 0 : (double) both / either;
    }

    /** Its edge, point after point along the sides of cells, with the area on the right hand; empty for an empty area. */
    EdgePolygon edge() {
        int first = 0;
        while (first < inside.length && !inside[first]) {
            first++;
        }
        List<EdgePolygon.Point> edge = new ArrayList<>();
        if (first == inside.length) {
            return new EdgePolygon(edge);
        }
        int x = first % width;
        int y = first / width;
        int direction = 0;
        do {
            edge.add(new EdgePolygon.Point(x, y));
            x += ACROSS[direction];
            y += DOWN[direction];
            if (!ahead(x, y, direction, 1)) {
                direction = (direction + 1) % 4;
            } else if (ahead(x, y, direction, -1)) {
                direction = (direction + 3) % 4;
            }
        } while (x != first % width || y != first / width || direction != 0);
        return new EdgePolygon(edge);
    }

    /** Whether the cell ahead of a point, on the right hand (1) or the left (-1), is inside. */
    private boolean ahead(int x, int y, int direction, int side) {
        int dx = ACROSS[direction] - side * DOWN[direction];
        int dy = DOWN[direction] + side * ACROSS[direction];
        return at(x + (dx - 1) / 2, y + (dy - 1) / 2);
    }
}
