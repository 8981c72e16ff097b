package tenterbook.recipe.dip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * The number of dips of one or several steps, and disagreements in what was recorded.
 *
 * <p>The rule: the number of timed dips counts where each has both its times. Where one lacks a time, the list may be
 * unfinished and the typed number counts; without a typed number the timed ones are counted anyway. Where the two numbers
 * differ, the disagreement is kept with the value.
 *
 * @param low fewest, 0 or more; 0 where nothing is known
 * @param high most; infinite where open or not known
 * @param known whether any number is known; a sum is known where that of one of its steps is
 * @param about whether the text has 'about'
 * @param timed whether it is the number of timed dips; of a sum, whether all of it is
 * @param disagreements in sentences
 */
public record DipTally(
        double low, double high, boolean known, boolean about, boolean timed, List<Written> disagreements) {
    /** No step with dips. */
    public static final DipTally NONE = new DipTally(0, 0, false, false, true, List.of());

    private static final DipTally UNKNOWN = new DipTally(0, Double.POSITIVE_INFINITY, false, false, false, List.of());

    public DipTally {
        disagreements = List.copyOf(disagreements);
    }

    /**
     * The tally of one step.
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
                    differ ? List.of(differ("recipe.dips.timed-counted", timed, number)) : List.of());
        }
        return of(number, differ ? List.of(differ("recipe.dips.typed-taken", timed, number)) : List.of());
    }

    private static DipTally of(Quantity number, List<Written> disagreements) {
        return new DipTally(
                number.low() == null ? 0 : number.low(),
                number.high() == null ? Double.POSITIVE_INFINITY : number.high(),
                true,
                number.about(),
                false,
                disagreements);
    }

    private static Written differ(String key, int timed, Quantity number) {
        return Message.of(
                key, "timed", timed, "typed", number, "one", Double.valueOf(1).equals(number.high()));
    }

    /** The sum; an end that is open or not known in either is so in the sum. */
    public DipTally plus(DipTally other) {
        List<Written> all = new ArrayList<>(disagreements);
        all.addAll(other.disagreements);
        return new DipTally(
                low + other.low,
                high + other.high,
                known || other.known,
                about || other.about,
                timed && other.timed,
                all);
    }

    /** The same tally, each disagreement prefixed with {@code where} and a colon. */
    public DipTally at(Written where) {
        if (disagreements.isEmpty()) {
            return this;
        }
        return new DipTally(
                low,
                high,
                known,
                about,
                timed,
                disagreements.stream()
                        .map(text -> (Written) Message.of("recipe.dips.at", "where", where, "what", text))
                        .toList());
    }

    /** For a dip curve; empty where an end is open, nothing is known, or the number is out of a curve's range. */
    public Optional<DipCount> counted() {
        return known && high <= DipCount.MOST
                ? Optional.of(new DipCount((int) Math.floor(low), (int) Math.ceil(high)))
                : Optional.empty();
    }

    /** As in '6', 'about 6–8', 'at least 3' or 'up to 8'; empty where nothing is known. */
    public Written number() {
        if (!known) {
            return Joined.NOTHING;
        }
        return about ? Message.of("measure.about", "value", range()) : range();
    }

    private Written range() {
        if (Double.isInfinite(high)) {
            return Message.of("measure.at-least", "value", NumberWords.rounded(low));
        }
        if (low == high) {
            return NumberWords.rounded(low);
        }
        return low == 0
                ? Message.of("measure.up-to", "value", NumberWords.rounded(high))
                : NumberWords.range(NumberWords.rounded(low), NumberWords.rounded(high));
    }

    public String text() {
        return number().onPaper();
    }

    /** As in '1 dip' or '6–8 dips'; empty where nothing is known. */
    public String dips() {
        return known
                ? Message.of("recipe.dips.number", "one", text().equals("1"), "number", number())
                        .onPaper()
                : "";
    }
}
