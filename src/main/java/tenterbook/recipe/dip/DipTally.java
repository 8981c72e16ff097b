package tenterbook.recipe.dip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;

/**
 * How many dips a step had, or several steps together, and where what was recorded disagrees.
 *
 * <p>The rule: timed dips were each witnessed, so their number holds where every one has both its times. Where one lacks a
 * time, the list may be unfinished and the number typed holds; without a number typed the timed ones are counted all the same.
 * Where the number typed and the number of timed dips differ, the disagreement is kept with the value.
 *
 * @param low at least so many, 0 or more; 0 where nothing is known
 * @param high at most so many; infinite where that end is open or not known
 * @param known whether any number is known; a sum is known where that of one of its steps is
 * @param about whether the writer said 'about'
 * @param timed whether it is the number of timed dips; of a sum, whether all of it is
 * @param disagreements in sentences
 */
public record DipTally(
        double low, double high, boolean known, boolean about, boolean timed, List<String> disagreements) {
    /** No step with dips. */
    public static final DipTally NONE = new DipTally(0, 0, false, false, true, List.of());

    private static final DipTally UNKNOWN = new DipTally(0, Double.POSITIVE_INFINITY, false, false, false, List.of());

    public DipTally {
        disagreements = List.copyOf(disagreements);
    }

    /**
     * Of one step.
     *
     * @param typed number of dips as counted or remembered
     * @param timed how many dips are listed with times
     * @param complete whether each of them has both its times
     */
    public static DipTally of(Quantity typed, int timed, boolean complete) {
        Quantity number = typed.known() && typed.unit() == Unit.COUNT ? typed : Quantity.UNRECORDED;
        if (timed == 0) {
            return number.known() ? of(number, List.of()) : UNKNOWN;
        }
        if (!number.known()) {
            return new DipTally(timed, timed, true, false, true, List.of());
        }
        boolean differ = number.low() != null && timed < number.low() || number.high() != null && timed > number.high();
        if (complete) {
            return new DipTally(
                    timed,
                    timed,
                    true,
                    false,
                    true,
                    differ
                            ? List.of("%s timed, but %s said to have been made. The timed ones are counted."
                                    .formatted(dipsAre(timed), are(number)))
                            : List.of());
        }
        return of(
                number,
                differ
                        ? List.of(
                                "%s timed, not each with both its times, but %s said to have been made. The number said is taken."
                                        .formatted(dipsAre(timed), are(number)))
                        : List.of());
    }

    private static DipTally of(Quantity number, List<String> disagreements) {
        return new DipTally(
                number.low() == null ? 0 : number.low(),
                number.high() == null ? Double.POSITIVE_INFINITY : number.high(),
                true,
                number.about(),
                false,
                disagreements);
    }

    private static String dipsAre(int dips) {
        return dips == 1 ? "1 dip is" : dips + " dips are";
    }

    private static String are(Quantity number) {
        return QuantityWords.entered(number) + (Double.valueOf(1).equals(number.high()) ? " is" : " are");
    }

    /** Both together: an end that is open or not known in one is so in the sum. */
    public DipTally plus(DipTally other) {
        List<String> all = new ArrayList<>(disagreements);
        all.addAll(other.disagreements);
        return new DipTally(
                low + other.low,
                high + other.high,
                known || other.known,
                about || other.about,
                timed && other.timed,
                all);
    }

    /** The same number, its disagreements each after {@code where} and a colon. */
    public DipTally at(String where) {
        if (disagreements.isEmpty()) {
            return this;
        }
        return new DipTally(
                low,
                high,
                known,
                about,
                timed,
                disagreements.stream().map(text -> where + ": " + text).toList());
    }

    /** As the dip curve takes it; empty where an end is open, nothing is known, or it is beyond what a curve is fitted to. */
    public Optional<DipCount> counted() {
        return known && high <= DipCount.MOST
                ? Optional.of(new DipCount((int) Math.floor(low), (int) Math.ceil(high)))
                : Optional.empty();
    }

    /** As in '6', 'about 6–8', 'at least 3' or 'up to 8'; empty where nothing is known. */
    public String text() {
        if (!known) {
            return "";
        }
        String number = Double.isInfinite(high)
                ? "at least " + QuantityWords.number(low)
                : low == high
                        ? QuantityWords.number(low)
                        : (low == 0 ? "up to " : QuantityWords.number(low) + "–") + QuantityWords.number(high);
        return about ? "about " + number : number;
    }

    /** As in '1 dip' or '6–8 dips'; empty where nothing is known. */
    public String dips() {
        return known ? text() + (text().equals("1") ? "\u00a0dip" : "\u00a0dips") : "";
    }
}
