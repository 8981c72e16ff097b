package tenterbook.search;

/**
 * A lower and an upper bound of CIEDE2000 without an angle or a trigonometric function, for leaving out colours that surely differ too
 * much and letting in those that surely do not. Holds the last answer; one thread.
 *
 * <p>Names and equations are those of Sharma, Wu, Dalal 2005, with kL = kC = kH = 1. Let l = ΔL'/SL, c = ΔC'/SC, h =
 * ΔH'/SH. Then ΔE00² = l² + c² + h² + RT·c·h.
 *
 * <ol>
 *   <li>l is exact here: SL needs no angle.
 *   <li>RT = −RC·sin(2Δθ) with 0 ≤ Δθ ≤ 30°, so |RT| ≤ ρ := RC·sin 60°, and RC = 2√(C̄'⁷/(C̄'⁷+25⁷)) needs no angle. As RC
 *       &lt; 2, ρ &lt; √3.
 *   <li>ΔH'² = 4·C1'·C2'·sin²(Δh'/2) = 2·C1'·C2'·(1 − cos Δh') = (a1'−a2')² + (b1−b2)² − (C1'−C2')², by the cosine rule in
 *       the a'b plane; where one chroma is 0 both sides are 0.
 *   <li>T ≤ 1 + 0.17 + 0.24 + 0.32 + 0.20 = 1.93, so SH ≤ 1 + 0.015·1.93·C̄' and |h| ≥ g := |ΔH'| / (1 + 0.02895·C̄').
 *   <li>So c² + h² + RT·c·h ≥ f(|h|) with f(x) = c² + x² − ρ·|c|·x, a parabola least at x₀ = ρ|c|/2. Over x ≥ g its least
 *       value is f(g) where g ≥ x₀, else f(x₀) = c²·(1 − ρ²/4), which is not negative because ρ &lt; √3 &lt; 2.
 * </ol>
 *
 * <p>The other way: T ≥ 1 − 0.17 − 0.24 − 0.32 − 0.20 = 0.07 and so SH ≥ 1 + 0.00105·C̄' and |h| ≤ k := |ΔH'| / that; with
 * RT·c·h ≤ ρ·|c|·|h|, ΔE00² ≤ l² + c² + k² + ρ·|c|·k. This tells that a colour surely is near enough.
 *
 * <p>Hence ΔE00² ≥ l² + that value. Rounding: every operation above is a few ulps from exact on numbers below 10⁵; callers
 * leave {@link #SLACK} of room.
 */
final class ColourBound {
    /** More than rounding can do to the square of a difference up to 40. */
    static final double SLACK = 1e-6;

    private static final double POW7_25 = 6103515625.0;
    /** sin² 60°. */
    private static final double SIN2_60 = 0.75;

    /** l² alone, the cheapest bound: ΔE00² is at least this. */
    static double squaredByLightness(double L1, double L2) {
        double fromFifty = (L1 + L2) / 2 - 50;
        double square = fromFifty * fromFifty;
        double l = (L2 - L1) / (1 + 0.015 * square / Math.sqrt(20 + square));
        return l * l;
    }

    /**
     * ΔH'² of two colours as vectors in the plane of a' and b', without the cancelling of Δa'² + Δb'² − ΔC'² where hues are nearly
     * the same: it is 2·(C1'C2' − dot), and (C1'C2')² − dot² = across².
     *
     * @param product C1'·C2'
     * @param dot a1'a2' + b1'b2'
     * @param across a1'b2' − a2'b1'
     */
    static double squaredByHue(double product, double dot, double across) {
        return dot > 0 ? 2 * across * across / (product + dot) : 2 * (product - dot);
    }

    /** ΔE00² of the pair compared last is at least this. */
    double least2;
    /** ΔE00² of the pair compared last is at most this. */
    double most2;

    /**
     * Bounds ΔE00² of two colours from both sides.
     *
     * @param l2 {@link #squaredByLightness} of the two
     * @param C1 √(a1² + b1²)
     * @param C2 √(a2² + b2²)
     */
    void compare(double l2, double a1, double b1, double C1, double a2, double b2, double C2) {
        double meanC7 = pow7((C1 + C2) / 2);
        double stretch = 1.5 - 0.5 * Math.sqrt(meanC7 / (meanC7 + POW7_25));
        double a1s = a1 * stretch;
        double a2s = a2 * stretch;
        double C1s = Math.sqrt(a1s * a1s + b1 * b1);
        double C2s = Math.sqrt(a2s * a2s + b2 * b2);
        double meanC = (C1s + C2s) / 2;
        double dC = C1s - C2s;
        double H2 = squaredByHue(C1s * C2s, a1s * a2s + b1 * b2, a1s * b2 - a2s * b1);
        double SC = 1 + 0.045 * meanC;
        double mostSH = 1 + 0.02895 * meanC;
        double leastSH = 1 + 0.00105 * meanC;
        double c2 = dC * dC / (SC * SC);
        double g2 = H2 / (mostSH * mostSH);
        double k2 = H2 / (leastSH * leastSH);
        double C7 = pow7(meanC);
        double rho2 = 4 * C7 / (C7 + POW7_25) * SIN2_60;
        least2 = l2 + (4 * g2 >= rho2 * c2 ? c2 + g2 - Math.sqrt(rho2 * c2 * g2) : c2 * (1 - rho2 / 4));
        most2 = l2 + c2 + k2 + Math.sqrt(rho2 * c2 * k2);
    }

    private static double pow7(double x) {
        double cube = x * x * x;
        return cube * cube * x;
    }
}
