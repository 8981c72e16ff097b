package tenterbook.colour.palette;

import java.util.ArrayList;
import java.util.List;
import tenterbook.measure.NumberWords;
import tenterbook.words.Refusal;

/**
 * A part of a picture, as a polygon in parts of its width and height, so that it fits every preview size. Inside is
 * decided by the even-odd rule at the middle of a pixel, so a lasso drawn by hand may have many corners and bays.
 *
 * @param corners three or more, each within 0 to 1, origin at the top left of the upright picture
 */
public record Region(List<Corner> corners) {
    /** The whole picture. */
    public static final Region WHOLE = rectangle(0, 0, 1, 1);

    /**
     * @param x 0 left edge to 1 right edge
     * @param y 0 top edge to 1 bottom edge
     */
    public record Corner(double x, double y) {
        /** @throws IllegalArgumentException if outside 0 to 1 or NaN */
        public Corner {
            if (!(x >= 0 && x <= 1 && y >= 0 && y <= 1)) {
                throw Refusal.of("colour.corner-outside", "x", NumberWords.plain(x), "y", NumberWords.plain(y));
            }
        }
    }

    /** @throws IllegalArgumentException if there are fewer than three corners */
    public Region {
        corners = List.copyOf(corners);
        if (corners.size() < 3) {
            throw Refusal.of("colour.too-few-corners", "found", corners.size());
        }
    }

    /** The rectangle between two corners, given in any order. */
    public static Region rectangle(double left, double top, double right, double bottom) {
        return new Region(List.of(
                new Corner(left, top), new Corner(right, top), new Corner(right, bottom), new Corner(left, bottom)));
    }

    /**
     * What a finger means by a place: a disc of 3 % of the picture's shorter side across, at least twelve pixels, as far as it
     * lies in the picture. Some threads wide on a photograph of a whole cloth, and well within a carved motif.
     */
    public static Region disc(double across, double down, int width, int height) {
        new Corner(across, down);
        double radius = Math.max(6, 0.015 * Math.min(width, height));
        List<Corner> corners = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            double angle = 2 * Math.PI * i / 24;
            corners.add(new Corner(
                    within(across + radius / width * Math.cos(angle)),
                    within(down + radius / height * Math.sin(angle))));
        }
        return new Region(corners);
    }

    private static double within(double part) {
        return Math.max(0, Math.min(1, part));
    }

    /** Whether a point lies inside, by the even-odd rule; x and y in parts of width and height. */
    public boolean contains(double x, double y) {
        boolean inside = false;
        Corner previous = corners.get(corners.size() - 1);
        for (Corner corner : corners) {
            if (corner.y > y != previous.y > y
                    && x < (previous.x - corner.x) * (y - corner.y) / (previous.y - corner.y) + corner.x) {
                inside = !inside;
            }
            previous = corner;
        }
        return inside;
    }

    /** The smallest x of a corner. */
    public double left() {
        return corners.stream().mapToDouble(Corner::x).min().orElse(0);
    }

    /** The largest x of a corner. */
    public double right() {
        return corners.stream().mapToDouble(Corner::x).max().orElse(1);
    }

    /** The smallest y of a corner. */
    public double top() {
        return corners.stream().mapToDouble(Corner::y).min().orElse(0);
    }

    /** The largest y of a corner. */
    public double bottom() {
        return corners.stream().mapToDouble(Corner::y).max().orElse(1);
    }
}
