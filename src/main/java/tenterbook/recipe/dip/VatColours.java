package tenterbook.recipe.dip;

import java.util.Comparator;
import java.util.List;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.words.Refusal;

/**
 * The way of colours that a vat's pieces lie along, from undyed cloth over the lightest to the darkest and on towards black. A curve
 * of depth knows nothing of hue and would name dips of woad for a madder red; this tells how far a colour lies beside the way.
 *
 * <p>Between pieces a* and b* are drawn straight over L*; lighter than the lightest they fall away to 0 at L* 100, darker than the
 * darkest to 0 at L* 0. That is our own simple rule, meant to tell another hue and not to foretell a shade.
 */
public final class VatColours {
    /**
     * A colour farther than this beside the way (ΔE00) is called another colour. Our own limit: the studio's pieces of one vat
     * lie within half of it.
     */
    public static final double BESIDE = 10;

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

    /** How far a colour lies beside the way at its own lightness, ΔE00. */
    public double beside(Lab colour) {
        return Ciede2000.difference(colour, at(colour.lightness()));
    }

    /** Whether dips of this vat may plausibly give the colour, at some depth. */
    public boolean passNear(Lab colour) {
        return beside(colour) <= BESIDE;
    }

    /** The colour on the way at a lightness from 0 to 100. */
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
