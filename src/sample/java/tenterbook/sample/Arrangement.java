package tenterbook.sample;

import org.jspecify.annotations.Nullable;
import tenterbook.sample.SampleColour.Lab;

/**
 * How the cloth of a scene is arranged before the camera, beyond what the sample archive needs: for pictures whose true outline
 * is known.
 *
 * @param zoom on the usual scale; from about 1.3 the cloth leaves the picture on every side
 * @param right how far its middle is moved to the right, as part of the picture's width
 * @param down the same downwards, of the height
 * @param pegged whether pegs hold it where it hangs
 * @param card whether a grey card lies beside it, or on it
 * @param hands whether a hand holds it at the side
 * @param things whether a box and a bowl stand beside it
 * @param wall the colour of the backdrop; null for the usual one
 */
record Arrangement(
        Shape shape,
        double zoom,
        double right,
        double down,
        boolean pegged,
        boolean card,
        boolean hands,
        boolean things,
        @Nullable Lab wall) {
    /** As on the photographs of the sample archive. */
    static final Arrangement PLAIN = new Arrangement(Shape.WHOLE, 1, 0, 0, true, true, false, false, null);

    private static final double FOLD = 0.62;
    /** Half of a coat with wide sleeves, from the middle of its neck, in parts of the cloth's width and height. */
    private static final double[][] COAT = {
        {0.07, 0.02}, {0.13, 0.0}, {0.49, 0.12}, {0.49, 0.42}, {0.26, 0.38}, {0.31, 1.0}, {0, 1.0}, {0, 0.16}
    };

    enum Shape {
        /** As it was cut. */
        WHOLE,
        /** One corner turned over to the front. */
        FOLDED,
        /** Sewn as a coat and worn. */
        WORN
    }

    /** mm inside the edge that the camera sees, negative outside; changes {@code mm} where the cloth is turned over there. */
    double inside(double[] mm, double width, double height) {
        double u = mm[0] / width;
        double v = mm[1] / height;
        if (shape == Shape.WORN) {
            return coat(Math.abs(u - 0.5) * width, v * height, width, height);
        }
        double edge = Math.min(Math.min(mm[0], width - mm[0]), Math.min(mm[1], height - mm[1]));
        double over = u + v - 1 - FOLD;
        double scale = Math.hypot(1 / width, 1 / height);
        if (over < 0 && mirrored(u, v)) {
            mm[0] = (1 + FOLD - v) * width;
            mm[1] = (1 + FOLD - u) * height;
        }
        return Math.min(edge, -over / scale);
    }

    /** Whether the turned corner lies over this place. */
    private static boolean mirrored(double u, double v) {
        return 1 + FOLD - v <= 1 && 1 + FOLD - u <= 1;
    }

    private static double coat(double x, double y, double width, double height) {
        boolean in = false;
        double least = Double.MAX_VALUE;
        double[] before = COAT[COAT.length - 1];
        for (double[] corner : COAT) {
            double ax = before[0] * width;
            double ay = before[1] * height;
            double bx = corner[0] * width;
            double by = corner[1] * height;
            if (by > y != ay > y && x < (ax - bx) * (y - by) / (ay - by) + bx) {
                in = !in;
            }
            // The middle is no edge.
            if (ax > 0 || bx > 0) {
                double t =
                        ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) * (bx - ax) + (by - ay) * (by - ay));
                double c = Math.max(0, Math.min(1, t));
                least = Math.min(least, Math.hypot(x - ax - c * (bx - ax), y - ay - c * (by - ay)));
            }
            before = corner;
        }
        return in ? least : -least;
    }

    /** Puts the head of the wearer, or the hand that holds the cloth, before it. */
    void people(Props props, Lay lay, double width, double height) {
        double s = lay.pixelsPerMm;
        if (shape == Shape.WORN) {
            double[] neck = lay.picture(width / 2, 0);
            props.skin(neck[0], neck[1] - 0.01 * height * s, 0.13 * width * s, 0.2 * height * s, 0);
        }
        if (things) {
            double[] left = lay.picture(0, height * 0.3);
            double[] corner = lay.picture(width, height);
            props.box(left[0] - 75 * s, left[1], 110 * s, 240 * s);
            props.bowl(corner[0] + 55 * s, corner[1] + 30 * s, 150 * s);
        }
        if (hands) {
            double[] side = lay.picture(width, height * 0.4);
            props.skin(side[0] + 6 * s, side[1], 0.16 * width * s, 0.09 * width * s, -20);
        }
    }
}
