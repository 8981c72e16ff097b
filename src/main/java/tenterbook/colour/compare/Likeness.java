package tenterbook.colour.compare;

/**
 * Normalised cross-correlation of two planes where both have a pixel: 1 equal up to brightness and contrast, 0 unrelated, -1
 * the negative.
 *
 * @param correlation -1 to 1; 0 where either is flat
 * @param overlap share of the first plane's pixels that were compared, 0 to 1
 */
record Likeness(double correlation, double overlap) {
    /** Maps a pixel of the first plane to the second. */
    interface Place {
        double x(double x, double y);

        double y(double x, double y);
    }

    static Likeness of(Plane one, Plane other, Place place) {
        double n = 0;
        double own = 0;
        double a = 0;
        double b = 0;
        double aa = 0;
        double bb = 0;
        double ab = 0;
        for (int y = 0; y < one.height(); y++) {
            for (int x = 0; x < one.width(); x++) {
                double u = one.values()[y * one.width() + x];
                if (Double.isNaN(u)) {
                    continue;
                }
                own++;
                double v = other.at(place.x(x, y), place.y(x, y));
                if (!Double.isNaN(v)) {
                    n++;
                    a += u;
                    b += v;
                    aa += u * u;
                    bb += v * v;
                    ab += u * v;
                }
            }
        }
        if (n < 16) {
            return new Likeness(0, own == 0 ? 0 : n / own);
        }
        double va = aa - a * a / n;
        double vb = bb - b * b / n;
        boolean flat = va <= 1e-9 * aa || vb <= 1e-9 * bb;
        return new Likeness(flat ? 0 : (ab - a * b / n) / Math.sqrt(va * vb), n / own);
    }
}
