package tenterbook.recipe;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.material.LotId;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;

/**
 * What an amount of a copied recipe is for other cloth: its percent of the weight of fibre where that is recorded, else in
 * proportion to the mass of the cloth.
 *
 * @param step place of its step, from 0
 * @param charge place in its step, from 0
 * @param lot null where none is recorded
 * @param copied as weighed for the clamping that was copied
 * @param scaled in grams, for the cloth of the copy; computed, never weighed
 */
public record ScaledCharge(int step, int charge, @Nullable LotId lot, Quantity copied, Quantity scaled) {
    /** Amounts that differ by less are the same: weighing is not exact to it (our choice). */
    private static final double SAME_WITHIN = 0.01;

    /**
     * The amounts that still stand as they were copied and are others for this cloth. Without a known mass of the cloth of the
     * copy there are none; what was weighed since the copy is left alone.
     *
     * @param mass of the cloth of the copy
     * @param masses of the cloth of the clamping copied
     */
    public static List<ScaledCharge> of(Clamping copy, Figure mass, Clamping copied, Figure masses) {
        List<ScaledCharge> scaled = new ArrayList<>();
        if (mass.refused()) {
            return scaled;
        }
        int steps = Math.min(copy.steps().size(), copied.steps().size());
        for (int i = 0; i < steps; i++) {
            List<Charge> now = copy.steps().get(i).charges();
            List<Charge> before = copied.steps().get(i).charges();
            for (int c = 0; c < Math.min(now.size(), before.size()); c++) {
                Charge charge = now.get(c);
                if (asCopied(charge, before.get(c))) {
                    Span grams = grams(charge, mass, masses);
                    if (grams.known() && Span.gap(Span.of(charge.weighed(), Unit.GRAM), grams) > SAME_WITHIN) {
                        Quantity amount = grams.in(Unit.GRAM);
                        scaled.add(new ScaledCharge(i, c, charge.lot(), charge.weighed(), amount));
                    }
                }
            }
        }
        return scaled;
    }

    private static boolean asCopied(Charge charge, Charge before) {
        return charge.weighed().known()
                && charge.weighed().unit().dimension() == Unit.GRAM.dimension()
                && Objects.equals(charge.lot(), before.lot())
                && Objects.equals(
                        charge.weighed().in(Unit.GRAM).low(),
                        before.weighed().in(Unit.GRAM).low())
                && Objects.equals(
                        charge.weighed().in(Unit.GRAM).high(),
                        before.weighed().in(Unit.GRAM).high());
    }

    private static Span grams(Charge charge, Figure mass, Figure masses) {
        Span cloth = Span.of(mass.value(), Unit.GRAM);
        if (charge.wof().known() && charge.wof().unit() == Unit.PERCENT) {
            return Span.of(charge.wof(), Unit.PERCENT).times(cloth).times(0.01);
        }
        return masses.refused()
                ? new Span(null, null, false)
                : Span.of(charge.weighed(), Unit.GRAM).times(cloth).over(Span.of(masses.value(), Unit.GRAM));
    }
}
