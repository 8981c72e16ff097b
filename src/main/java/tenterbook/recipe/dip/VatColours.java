package tenterbook.recipe.dip;

import java.util.Comparator;
import java.util.List;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.measure.Threshold;
import tenterbook.words.Refusal;

/**
 * The path in CIELAB of a vat's pieces, from undyed cloth over the lightest to the darkest and on towards black. A curve of
 * depth ignores hue and would name dips of woad for a madder red; this gives the distance of a colour from the path.
 *
 * <p>Between pieces a* and b* are linear in L*; lighter than the lightest they fall to 0 at L* 100, darker than the darkest to
 * 0 at L* 0. Our own simple rule, to recognise another hue and not to predict a shade.
 */
public final class VatColours {
    /**
     * A colour farther than this from the path (ΔE00) counts as another colour. Our own limit: the studio's pieces of one vat
     * lie within half of it.
     */
    public static final double BESIDE = Threshold.number("vat-other-colour");

    private final List<Lab> byLightness;

    /** @param pieces colours that dips of one vat gave, in any order; at least one */
    public VatColours(List<Lab> pieces) {
        if (pieces.isEmpty()) {
            throw Refusal.of("recipe.vat-colours");
        }
        byLightness = pieces.stream()
                .sorted(Comparator.comparingDouble(Lab::lightness))
                .toList();
    }

    /** Distance of a colour from the path at its own lightness, ΔE00. */
    public double beside(Lab colour) {
        return Ciede2000.difference(colour, at(colour.lightness()));
    }

    /** Whether dips of this vat may plausibly give the colour, at some depth. */
    public boolean passNear(Lab colour) {
        return beside(colour) <= BESIDE;
    }

    /** The colour on the path at a lightness from 0 to 100. */
    Lab at(double lightness) {
        Lab darker = new Lab(0, 0, 0);
        Lab lighter = new Lab(100, 0, 0);
        for (Lab each : byLightness) {
            if (each.lightness() <= lightness) {
                darker = each;
            } else {
                lighter = each;
                break;
            }
        }
        double span = lighter.lightness() - darker.lightness();
        double t = span <= 0 ? 0 : (lightness - darker.lightness()) / span;
        return new Lab(
                lightness, darker.a() + t * (lighter.a() - darker.a()), darker.b() + t * (lighter.b() - darker.b()));
    }
}
