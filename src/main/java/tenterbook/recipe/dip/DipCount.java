package tenterbook.recipe.dip;

import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * How many dips a piece had: counted, or remembered as "6 to 8". Every whole number of a range counts as equally likely.
 *
 * @param low fewest, 0 or more (0 is the undyed cloth)
 * @param high most, not below {@code low}, at most 200
 */
public record DipCount(int low, int high) {
    static final int MOST = 200;

    /** @throws IllegalArgumentException if out of range or in the wrong order */
    public DipCount {
        if (low < 0 || high < low || high > MOST) {
            throw Refusal.of("recipe.dip-count", "most", MOST, "low", low, "high", high);
        }
    }

    public static DipCount exactly(int dips) {
        return new DipCount(dips, dips);
    }

    /** The middle of the range. */
    public double middle() {
        return (low + high) / 2.0;
    }

    /** {@code 6} or {@code 6 to 8}. */
    public String text() {
        return low == high
                ? String.valueOf(low)
                : Message.of("recipe.dip-range", "low", low, "high", high).onPaper();
    }
}
