package tenterbook.colour.space;

/** Perceived difference between two colours, CIEDE2000 (CIE 142, ISO/CIE 11664-6). */
public final class Ciede2000 {
    private static final double POW7_25 = Math.pow(25, 7);

    private Ciede2000() {}

    /**
     * ΔE00 with kL = kC = kH = 1. Unitless, 0 or more, symmetric within rounding (1e-9).
     *
     * @param one CIELAB, D65, 2° observer
     * @param other the same illuminant and observer
     * @see "Sharma, Wu, Dalal 2005, Color Res. Appl. 30(1), equations 2 to 22; checked against pairs 1 to 20 of table 1"
     */
    public static double difference(Lab one, Lab other) {
        return difference(one.lightness(), one.a(), one.b(), other.lightness(), other.a(), other.b());
    }

    /** The same from bare numbers and without allocation, for scans. Undefined for NaN and infinities. */
    public static double difference(double L1, double a1, double b1, double L2, double a2, double b2) {
        double stretch = 1 + 0.5 * (1 - chromaRatio((Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2));
        double a1s = a1 * stretch;
        double a2s = a2 * stretch;
        double C1 = Math.sqrt(a1s * a1s + b1 * b1);
        double C2 = Math.sqrt(a2s * a2s + b2 * b2);
        double h1 = hue(a1s, b1);
        double h2 = hue(a2s, b2);
        boolean grey = C1 * C2 == 0;

        double dh = grey ? 0 : h2 - h1;
        if (dh > Math.PI) {
            dh -= 2 * Math.PI;
        } else if (dh < -Math.PI) {
            dh += 2 * Math.PI;
        }
        double meanL = (L1 + L2) / 2;
        double meanC = (C1 + C2) / 2;
        double meanH = meanHue(h1, h2, grey);

        double T = 1
                - 0.17 * Math.cos(meanH - Math.toRadians(30))
                + 0.24 * Math.cos(2 * meanH)
                + 0.32 * Math.cos(3 * meanH + Math.toRadians(6))
                - 0.20 * Math.cos(4 * meanH - Math.toRadians(63));
        double fromFifty = (meanL - 50) * (meanL - 50);
        double SL = 1 + 0.015 * fromFifty / Math.sqrt(20 + fromFifty);
        double SC = 1 + 0.045 * meanC;
        double SH = 1 + 0.015 * meanC * T;
        double fromBlue = (Math.toDegrees(meanH) - 275) / 25;
        double turn = Math.toRadians(30 * Math.exp(-fromBlue * fromBlue));
        double RT = -2 * chromaRatio(meanC) * Math.sin(2 * turn);

        double l = (L2 - L1) / SL;
        double c = (C2 - C1) / SC;
        double h = 2 * Math.sqrt(C1 * C2) * Math.sin(dh / 2) / SH;
        return Math.sqrt(Math.max(0, l * l + c * c + h * h + RT * c * h));
    }

    private static double meanHue(double h1, double h2, boolean grey) {
        double sum = h1 + h2;
        if (grey) {
            return sum;
        }
        if (Math.abs(h1 - h2) <= Math.PI) {
            return sum / 2;
        }
        return sum < 2 * Math.PI ? sum / 2 + Math.PI : sum / 2 - Math.PI;
    }

    private static double hue(double a, double b) {
        if (a == 0 && b == 0) {
            return 0;
        }
        double h = Math.atan2(b, a);
        return h < 0 ? h + 2 * Math.PI : h;
    }

    /** √(C⁷ / (C⁷ + 25⁷)), which G and RC are made of (equations 4 and 17): 0 for grey, growing towards 1. */
    public static double chromaRatio(double C) {
        double cube = C * C * C;
        double C7 = cube * cube * C;
        return Math.sqrt(C7 / (C7 + POW7_25));
    }
}
