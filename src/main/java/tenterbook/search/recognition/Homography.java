package tenterbook.search.recognition;

import java.util.Arrays;

/**
 * How a flat cloth seen in one picture lies in another: each place of the one falls on a place of the other.
 *
 * @param h nine numbers row by row, the last of them 1
 */
public record Homography(double... h) {
    public Homography {
        h = h.clone();
        if (h.length != 9) {
            throw new IllegalStateException("A homography has nine numbers; found " + h.length);
        }
    }

    @Override
    public double[] h() {
        return h.clone();
    }

    private double w(double x, double y) {
        return h[6] * x + h[7] * y + h[8];
    }

    public double x(double x, double y) {
        return (h[0] * x + h[1] * y + h[2]) / w(x, y);
    }

    public double y(double x, double y) {
        return (h[3] * x + h[4] * y + h[5]) / w(x, y);
    }

    /** By how much an area at this place grows; negative where it is turned over. */
    double area(double x, double y) {
        double w = w(x, y);
        double px = x(x, y);
        double py = y(x, y);
        double a = (h[0] - px * h[6]) / w;
        double b = (h[1] - px * h[7]) / w;
        double c = (h[3] - py * h[6]) / w;
        double d = (h[4] - py * h[7]) / w;
        return a * d - b * c;
    }

    /** This, and then the other. */
    Homography then(Homography next) {
        double[] product = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                for (int k = 0; k < 3; k++) {
                    product[3 * row + column] += next.h[3 * row + k] * h[3 * k + column];
                }
            }
        }
        return new Homography(scaled(product));
    }

    private static double[] scaled(double[] h) {
        double last = h[8];
        for (int i = 0; i < 9; i++) {
            h[i] /= last;
        }
        return h;
    }

    /** From places of the other picture back to those of this one. */
    public Homography inverse() {
        double[] i = {
            h[4] * h[8] - h[5] * h[7], h[2] * h[7] - h[1] * h[8], h[1] * h[5] - h[2] * h[4],
            h[5] * h[6] - h[3] * h[8], h[0] * h[8] - h[2] * h[6], h[2] * h[3] - h[0] * h[5],
            h[3] * h[7] - h[4] * h[6], h[1] * h[6] - h[0] * h[7], h[0] * h[4] - h[1] * h[3]
        };
        return new Homography(scaled(i));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Homography homography && Arrays.equals(h, homography.h);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(h);
    }

    @Override
    public String toString() {
        return "Homography" + Arrays.toString(h);
    }
}
