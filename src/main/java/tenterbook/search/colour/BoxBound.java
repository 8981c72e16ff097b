package tenterbook.search.colour;

import tenterbook.colour.space.Ciede2000;

/**
 * Proven bounds of CIEDE2000 from one colour to every colour of a box in CIELAB. One thread; holds the last answer.
 *
 * <p>Names as in Sharma, Wu, Dalal 2005 and {@link CloseBound}: l = ΔL'/SL, c = ΔC'/SC, h = ΔH'/SH, ΔE00² = l² + c² + h² +
 * RT·c·h. The box is [Llo,Lhi] × [alo,ahi] × [blo,bhi], colour 1 is fixed, colour 2 any in the box.
 *
 * <ol>
 *   <li>l rises with L2. With s = L̄ − 50 and f(s) = s²/√(20+s²), SL = 1 + 0.015·f, the derivative has the sign of SL −
 *       (L2−L1)·0.015·f'/2 = 1 − 0.015·(s·f' − f) + 0.015·(L1−50)·f'. As s·f' − f = 20s²/(s²+20)^1.5 ≤ 1.73 and |f'| ≤ 1.089,
 *       it is at least 1 − 0.026 − 0.817 &gt; 0 for 0 ≤ L1 ≤ 100. So the ends of the box give the ends of l. For other L1 only 0
 *       and infinity are taken.
 *   <li>The stretch 1 + G falls with the mean chroma, which lies between the means with the box's least and greatest chroma:
 *       it is in [slo, shi], 1 ≤ slo. Both colours have the same stretch s.
 *   <li>C2' = √(s²a2² + b2²) grows with |a2|, |b2| and s. ΔC' = g(s) = √(s²a2² + b2²) − √(s²a1² + b1²) for fixed a2, b2 has
 *       g'(s) = p2(s) − p1(s) with p(s) = a²s/C' growing in s, hence p2(slo) − p1(shi) ≤ g' ≤ p2(shi) − p1(slo), and g(s) differs
 *       from g(slo) by at most that times shi − slo. Least |a2|, |b2| give the lower end of ΔC', the greatest the upper.
 *   <li>Where the box does not hold a = b = 0 it lies in a half plane, its hue angles run between two corners, and stretching
 *       keeps their order (a linear map with positive determinant). The stretched hue atan2(b, s·a) changes with s by at most
 *       |ab|/(s²a²+b²) ≤ 1/2 a unit, so that half of (shi−slo)/2 is added to the ends found at the middle stretch.
 *   <li>|ΔH'| = 2√(C1'C2')·sin(|Δh'|/2), growing in all three for |Δh'| ≤ 180°; also ΔH'² = (Δa')² + (Δb)² − (ΔC')². The closer
 *       of both bounds is taken. Where Δh' can pass 180°, or the box holds grey, the hue and its sign are unknown.
 *   <li>The mean hue is h1' + Δh'/2. |T'| ≤ 0.17 + 2·0.24 + 3·0.32 + 4·0.20 = 2.41 per radian and |T''| ≤ 0.17 + 4·0.24 + 9·0.32
 *       + 16·0.20 = 7.21, so within w of m T differs from T(m) by at most 2.41·w and at most |T'(m)|·w + 7.22·w²/2 (Taylor); always
 *       0.07 ≤ T ≤ 1.93.
 *   <li>RT = −RC·sin 2Δθ, RC grows with C̄', and Δθ = 30°·exp(−((h̄−275)/25)²) ≤ 30° falls with the distance from 275°.
 *   <li>With ρ in [ρlo, ρhi] for |RT|: where c·h is surely negative, the least is clo² + hlo² + ρlo·clo·hlo. Otherwise c² + h² −
 *       ρhi·|c||h| bounds from below; ρhi &lt; 2 makes it a convex form least at the origin, so over a rectangle of |c|, |h| it is
 *       least on one of the two sides nearest the origin, where it is a parabola. A convex form is greatest at a corner.
 * </ol>
 *
 * <p>Rounding is far below {@link #SLACK}, which callers leave.
 */
final class BoxBound {
    /** More than rounding can do to the square of a difference up to 40. */
    static final double SLACK = 1e-6;
    /** More than is lost where squares of up to 10⁵ nearly cancel. */
    private static final double CANCELLED = 1e-9;
    /** More than rounding does to an angle, in radians. */
    private static final double ROUNDED = 1e-9;

    private final double L1;
    private final double a1;
    private final double b1;
    private final double C1;
    private final boolean usualLightness;

    private double least2;
    private double most2;
    /** T and sin 2Δθ of every pair with a colour of the box compared last. */
    private final HueTerms hue = new HueTerms();
    // Ends, of the box compared last, of what the steps above name.
    private boolean holdsGrey;
    private double sLo;
    private double sHi;
    private double C1lo;
    private double C1hi;
    private double C2lo;
    private double C2hi;
    private double dClo;
    private double dChi;
    private double meanClo;
    private double meanChi;
    private double cLo;
    private double cHi;
    private double H2lo;
    private double H2hi;

    BoxBound(double L, double a, double b) {
        L1 = L;
        a1 = a;
        b1 = b;
        C1 = Math.sqrt(a * a + b * b);
        usualLightness = L >= 0 && L <= 100;
    }

    /** ΔE00² to the box compared last is at least this. */
    double least2() {
        return least2;
    }

    /** ΔE00² to the box compared last is at most this. */
    double most2() {
        return most2;
    }

    /** Bounds a part of a tree as {@link #box} does. */
    void bound(ColourTree tree, int part, double limit2) {
        box(tree.boxes, 6 * part, tree.corners[part], limit2);
    }

    /** ΔL'/SL. */
    static double l(double L1, double L2) {
        double fromFifty = (L1 + L2) / 2 - 50;
        double square = fromFifty * fromFifty;
        return (L2 - L1) / (1 + 0.015 * square / Math.sqrt(20 + square));
    }

    /**
     * Bounds the box; where it is surely farther than {@code limit2} without an angle, only {@link #least2} is set.
     *
     * @param box Llo, Lhi, alo, ahi, blo, bhi from index {@code at}
     * @param corners the corners of least and greatest hue as {@link #corners} gives them
     */
    void box(double[] box, int at, int corners, double limit2) {
        double lo = usualLightness ? l(L1, box[at]) : 0;
        double hi = usualLightness ? l(L1, box[at + 1]) : Double.POSITIVE_INFINITY;
        double leastL2 = lo > 0 ? lo * lo : hi < 0 ? hi * hi : 0;
        least2 = leastL2;
        most2 = Double.POSITIVE_INFINITY;
        if (leastL2 > limit2) {
            return;
        }
        chroma(box, at);
        // Whatever RT: c² + h² − ρ|c||h| ≥ c²(1 − ρ²/4) ≥ c²/4, because ρ ≤ √3.
        least2 = leastL2 + cLo * cLo / 4;
        if (least2 > limit2) {
            return;
        }
        int side = hue(box, at, corners);
        double hLo = Math.sqrt(H2lo) / (1 + 0.015 * meanChi * hue.mostT());
        double hHi = Math.sqrt(Math.max(H2lo, H2hi)) / (1 + 0.015 * meanClo * hue.leastT());
        int sign = side * (dClo > 0 ? 1 : dChi < 0 ? -1 : 0);
        double rhoLo = 2 * Ciede2000.chromaRatio(meanClo) * hue.leastTurn();
        double rhoHi = 2 * Ciede2000.chromaRatio(meanChi) * hue.mostTurn();
        least2 = leastL2 + least(cLo, hLo, cHi, hHi, rhoLo, rhoHi, sign);
        most2 = Math.max(lo * lo, hi * hi) + most(cLo, hLo, cHi, hHi, rhoLo, rhoHi, sign);
    }

    /** The stretch, both chromas, ΔC', its quotient by SC and, from the distance in the plane of a' and b', ΔH'². */
    private void chroma(double[] box, int at) {
        double alo = box[at + 2];
        double ahi = box[at + 3];
        double blo = box[at + 4];
        double bhi = box[at + 5];
        double aNear = alo > 0 ? alo : ahi < 0 ? -ahi : 0;
        double bNear = blo > 0 ? blo : bhi < 0 ? -bhi : 0;
        double aFar = Math.max(-alo, ahi);
        double bFar = Math.max(-blo, bhi);
        holdsGrey = aNear == 0 && bNear == 0;
        sHi = stretch(Math.sqrt(aNear * aNear + bNear * bNear));
        sLo = stretch(Math.sqrt(aFar * aFar + bFar * bFar));
        C1lo = scaled(a1, b1, sLo);
        C1hi = scaled(a1, b1, sHi);
        C2lo = scaled(aNear, bNear, sLo);
        C2hi = scaled(aFar, bFar, sHi);
        double p1lo = pull(a1, sLo, C1lo);
        double p1hi = pull(a1, sHi, C1hi);
        dClo = C2lo - C1lo + Math.min(0, pull(aNear, sLo, C2lo) - p1hi) * (sHi - sLo);
        dChi = scaled(aFar, bFar, sLo) - C1lo + Math.max(0, pull(aFar, sHi, C2hi) - p1lo) * (sHi - sLo);
        double dCnear = dClo > 0 ? dClo : dChi < 0 ? -dChi : 0;
        double dCfar = Math.max(-dClo, dChi);
        meanClo = (C1lo + C2lo) / 2;
        meanChi = (C1hi + C2hi) / 2;
        cLo = dCnear / (1 + 0.045 * meanChi);
        cHi = dCfar / (1 + 0.045 * meanClo);
        double daNear = sLo * Math.max(0, Math.max(alo - a1, a1 - ahi));
        double dbNear = Math.max(0, Math.max(blo - b1, b1 - bhi));
        double daFar = sHi * Math.max(ahi - a1, a1 - alo);
        double dbFar = Math.max(bhi - b1, b1 - blo);
        H2lo = Math.max(0, daNear * daNear + dbNear * dbNear - dCfar * dCfar - CANCELLED);
        H2hi = Math.max(0, daFar * daFar + dbFar * dbFar - dCnear * dCnear + CANCELLED);
        H2hi = Math.min(H2hi, 4 * C1hi * C2hi);
    }

    /**
     * Brings the bounds of ΔH'² closer by the angles, and sets those of T and sin 2Δθ.
     *
     * @return the sign of Δh' where it is the same for the whole box, else 0
     */
    private int hue(double[] box, int at, int corners) {
        hue.any();
        if (holdsGrey || C1 == 0) {
            return 0;
        }
        double s = (sLo + sHi) / 2;
        double loose = (sHi - sLo) / 4 + ROUNDED;
        double h1 = Math.atan2(b1, s * a1);
        double from = angle(box, at, corners & 3, s);
        double width = angle(box, at, corners >> 2, s) - from;
        width = width < 0 ? width + 2 * Math.PI : width;
        double dLo = from - h1;
        dLo = dLo > Math.PI ? dLo - 2 * Math.PI : dLo < -Math.PI ? dLo + 2 * Math.PI : dLo;
        double dHi = dLo + width + 2 * loose;
        dLo -= 2 * loose;
        if (dHi >= Math.PI || dLo <= -Math.PI) {
            return 0;
        }
        double sinLo = Math.sin((dLo > 0 ? dLo : dHi < 0 ? -dHi : 0) / 2);
        double sinHi = Math.sin(Math.max(-dLo, dHi) / 2);
        H2lo = Math.max(H2lo, 4 * C1lo * C2lo * sinLo * sinLo);
        H2hi = Math.min(H2hi, 4 * C1hi * C2hi * sinHi * sinHi);
        hue.near(h1 + (dLo + dHi) / 4, (dHi - dLo) / 4 + loose);
        return dLo > 0 ? 1 : dHi < 0 ? -1 : 0;
    }

    private static double angle(double[] box, int at, int corner, double s) {
        return Math.atan2(box[at + 4 + (corner >> 1)], s * box[at + 2 + (corner & 1)]);
    }

    private static double least(double cLo, double hLo, double cHi, double hHi, double rhoLo, double rhoHi, int sign) {
        if (sign < 0) {
            return cLo * cLo + hLo * hLo + rhoLo * cLo * hLo;
        }
        double h = Math.max(hLo, Math.min(hHi, rhoHi * cLo / 2));
        double c = Math.max(cLo, Math.min(cHi, rhoHi * hLo / 2));
        return Math.min(cLo * cLo + h * h - rhoHi * cLo * h, c * c + hLo * hLo - rhoHi * c * hLo);
    }

    private static double most(double cLo, double hLo, double cHi, double hHi, double rhoLo, double rhoHi, int sign) {
        if (sign <= 0) {
            return cHi * cHi + hHi * hHi + rhoHi * cHi * hHi;
        }
        double one = cHi * cHi + hLo * hLo - rhoLo * cHi * hLo;
        double other = cLo * cLo + hHi * hHi - rhoLo * cLo * hHi;
        double both = cHi * cHi + hHi * hHi - rhoLo * cHi * hHi;
        return Math.max(both, Math.max(one, other));
    }

    private double stretch(double C2) {
        return 1.5 - 0.5 * Ciede2000.chromaRatio((C1 + C2) / 2);
    }

    private static double scaled(double a, double b, double s) {
        return Math.sqrt(a * a * s * s + b * b);
    }

    private static double pull(double a, double s, double C) {
        return C == 0 ? 0 : a * a * s / C;
    }

    /**
     * The corners between which the hues of a box lie that does not hold grey: two bits for the first (1: greater a, 2: greater b),
     * two above them for the last.
     */
    static int corners(double[] box, int at) {
        double middle = Math.atan2(box[at + 4] + box[at + 5], box[at + 2] + box[at + 3]);
        double first = 0;
        double last = 0;
        int corners = 0;
        for (int corner = 0; corner < 4; corner++) {
            double a = box[at + 2 + (corner & 1)];
            double b = box[at + 4 + (corner >> 1)];
            double off = Math.IEEEremainder(Math.atan2(b, a) - middle, 2 * Math.PI);
            if (corner == 0 || off < first) {
                first = off;
                corners = corners & 12 | corner;
            }
            if (corner == 0 || off > last) {
                last = off;
                corners = corners & 3 | corner << 2;
            }
        }
        return corners;
    }
}
