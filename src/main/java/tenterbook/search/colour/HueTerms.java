package tenterbook.search.colour;

/**
 * The terms of CIEDE2000 that depend on hue (Sharma, Wu, Dalal 2005: T, equation 15, and sin 2Δθ, equations 16 and 21) over a range
 * of mean hues, from tables: each end rounded to its own side. Holds the last answer; one thread.
 */
final class HueTerms {
    /** sin 2Δθ is no more than this 75° and more from blue: 2·30°·exp(−9) in radians. */
    private static final double FAR_FROM_BLUE = Math.toRadians(60) * Math.exp(-9);

    private static final double SIN_60 = Math.sqrt(0.75);

    private static final double BLUE = Math.toRadians(275);
    private static final double FAR = Math.toRadians(75);
    private static final int STEPS = 4096;
    /** Half a step of the table of T, and more than rounding adds to it. */
    private static final double HALF_STEP = Math.PI / STEPS + 1e-9;

    private static final double[] T = new double[STEPS];
    /** |T'| at the same places, per radian. */
    private static final double[] SLOPE = new double[STEPS];
    /** sin 2Δθ at distances from blue, i/{@value #STEPS} of 75°. */
    private static final double[] TURN = new double[STEPS + 2];

    static {
        for (int i = 0; i < STEPS; i++) {
            double h = 2 * Math.PI * i / STEPS;
            T[i] = 1
                    - 0.17 * Math.cos(h - Math.toRadians(30))
                    + 0.24 * Math.cos(2 * h)
                    + 0.32 * Math.cos(3 * h + Math.toRadians(6))
                    - 0.20 * Math.cos(4 * h - Math.toRadians(63));
            SLOPE[i] = Math.abs(0.17 * Math.sin(h - Math.toRadians(30))
                    - 0.48 * Math.sin(2 * h)
                    - 0.96 * Math.sin(3 * h + Math.toRadians(6))
                    + 0.80 * Math.sin(4 * h - Math.toRadians(63)));
        }
        for (int i = 0; i < TURN.length; i++) {
            double x = 3.0 * i / STEPS;
            TURN[i] = Math.sin(Math.toRadians(60) * Math.exp(-x * x));
        }
    }

    private double leastT;
    private double mostT;
    private double leastTurn;
    private double mostTurn;

    /** T of every hue of the range is at least this. */
    double leastT() {
        return leastT;
    }

    double mostT() {
        return mostT;
    }

    /** sin 2Δθ of every hue of the range is at least this. */
    double leastTurn() {
        return leastTurn;
    }

    double mostTurn() {
        return mostTurn;
    }

    /** Nothing is known of the hue. */
    void any() {
        leastT = 0.07;
        mostT = 1.93;
        leastTurn = 0;
        mostTurn = SIN_60;
    }

    /**
     * Mean hues within {@code around} of {@code middle}.
     *
     * @param middle radians, from −2π to less than 4π
     * @param around radians, 0 or more
     */
    void near(double middle, double around) {
        double m = middle < 0 ? middle + 2 * Math.PI : middle >= 2 * Math.PI ? middle - 2 * Math.PI : middle;
        int at = (int) (m * (STEPS / (2 * Math.PI)) + 0.5) & STEPS - 1;
        double wide = around + HALF_STEP;
        double away = Math.min(2.41 * wide, SLOPE[at] * wide + 3.61 * wide * wide);
        leastT = Math.max(0.07, T[at] - away);
        mostT = Math.min(1.93, T[at] + away);
        double off = Math.abs(m - BLUE);
        double nearest = Math.max(0, Math.min(off, 2 * Math.PI - off) - around - 1e-9);
        if (nearest >= FAR) {
            leastTurn = 0;
            mostTurn = FAR_FROM_BLUE;
            return;
        }
        mostTurn = TURN[(int) (nearest * (STEPS / FAR))];
        // The standard counts the distance from 0° to 360° and not round the circle.
        boolean wraps = m - around < 0 || m + around >= 2 * Math.PI;
        double farthest = off + around + 1e-9;
        leastTurn = wraps || farthest >= FAR ? 0 : TURN[(int) (farthest * (STEPS / FAR)) + 1];
    }
}
