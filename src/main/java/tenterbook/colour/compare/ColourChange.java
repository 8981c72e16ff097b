package tenterbook.colour.compare;

import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;

/**
 * The change from one colour to another by component, after minus before. Unitless.
 *
 * @param lightness ΔL*, positive where paler
 * @param a Δa*, positive where redder
 * @param b Δb*, positive where yellower
 * @param chroma ΔC*, positive where stronger, negative where duller
 * @param cie1976 ΔE*ab, 0 or more, in which grey scales are defined
 * @param ciede2000 ΔE00, 0 or more, which agrees better with the eye
 * @see "CIE 15 and ISO/CIE 11664-4: ΔE*ab² = ΔL*² + Δa*² + Δb*²"
 */
public record ColourChange(double lightness, double a, double b, double chroma, double cie1976, double ciede2000) {

    /** Both colours: CIELAB of one illuminant and observer, measured in the same way. */
    public static ColourChange between(Lab before, Lab after) {
        double dL = after.lightness() - before.lightness();
        double da = after.a() - before.a();
        double db = after.b() - before.b();
        return new ColourChange(
                dL,
                da,
                db,
                after.chroma() - before.chroma(),
                Math.sqrt(dL * dL + da * da + db * db),
                Ciede2000.difference(before, after));
    }
}
