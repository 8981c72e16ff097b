package tenterbook.recipe;

import java.util.List;
import tenterbook.measure.Quantity;
import tenterbook.recipe.dip.DipTally;

/**
 * The dips in a vat: a count alone, a range, or each dip with its times.
 *
 * @param count number of dips as remembered or counted
 * @param each how long each dip took, where they were alike
 * @param airing how long the bundle hung between two dips
 * @param dips each dip, where they were timed; empty otherwise
 */
public record DipSeries(Quantity count, Quantity each, Quantity airing, List<Dip> dips) {
    public static final DipSeries UNRECORDED =
            new DipSeries(Quantity.UNRECORDED, Quantity.UNRECORDED, Quantity.UNRECORDED, List.of());

    public DipSeries {
        count = count == null ? Quantity.UNRECORDED : count;
        each = each == null ? Quantity.UNRECORDED : each;
        airing = airing == null ? Quantity.UNRECORDED : airing;
        dips = dips == null ? List.of() : List.copyOf(dips);
    }

    public boolean recorded() {
        return count.recorded() || each.recorded() || airing.recorded() || !dips.isEmpty();
    }

    /** How many there were; {@link DipTally} has the rule where both a count and timed dips are recorded. */
    public DipTally tally() {
        return DipTally.of(count, dips.size(), dips.stream().allMatch(dip -> dip.in() != null && dip.out() != null));
    }
}
