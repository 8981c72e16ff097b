package tenterbook.colour.space;

/**
 * Linear light in the primaries of sRGB, before the transfer curve. 1 is a white reflector; after a correction a component may
 * lie outside 0 to 1.
 */
public record LinearRgb(double red, double green, double blue) {
    /** @throws IllegalStateException if a component is NaN or infinite */
    public LinearRgb {
        if (!Double.isFinite(red + green + blue)) {
            throw new IllegalStateException(
                    "Linear light needs finite numbers; found: " + red + ", " + green + ", " + blue);
        }
    }

    /** The light of a CIELAB colour, D65, 2° observer; outside sRGB a component is below 0 or above 1. */
    public static LinearRgb of(Lab lab) {
        double[] rgb = SrgbToLab.linearOf(lab.lightness(), lab.a(), lab.b());
        return new LinearRgb(rgb[0], rgb[1], rgb[2]);
    }

    /** CIELAB, D65, 2° observer. */
    public Lab lab() {
        double[] lab = new double[3];
        SrgbToLab.ofLinear(red, green, blue, lab, 0);
        return new Lab(lab[0], lab[1], lab[2]);
    }

    /** Y, the relative luminance: 0 black, 1 white. Coefficients as in {@link SrgbToLab}. */
    public double luminance() {
        return 87098.0 / 409605 * red + 175762.0 / 245763 * green + 12673.0 / 175545 * blue;
    }

    public LinearRgb times(double factor) {
        return new LinearRgb(red * factor, green * factor, blue * factor);
    }
}
