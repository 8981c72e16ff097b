package tenterbook.colour.space;

import java.util.List;
import tenterbook.measure.Threshold;
import tenterbook.words.Message;

/**
 * A CIEDE2000 distance in plain words. The steps are common practice, not a standard ({@code thresholds.csv}): what the eye notices depends on
 * light, surface and the gap between the cloths.
 */
public final class DifferenceWords {
    private static final List<Double> STEPS = Threshold.numbers("difference-words");
    private static final List<String> WORDS =
            List.of("none", "hardly", "just", "glance", "shades", "related", "different");

    private DifferenceWords() {}

    /** How many steps a difference has passed: 0 where nothing is seen, to 6. */
    public static int step(double dE00) {
        return (int) STEPS.stream().filter(step -> dE00 >= step).count();
    }

    /**
     * @param dE00 CIEDE2000 difference, 0 or more
     * @return words that follow "these two": for instance "cannot be told apart"
     * @throws IllegalStateException if negative, NaN or infinite
     */
    public static Message of(double dE00) {
        if (!(dE00 >= 0) || Double.isInfinite(dE00)) {
            throw new IllegalStateException("A colour difference is 0 or more and finite; found: " + dE00);
        }
        return Message.of("colour.difference." + WORDS.get(step(dE00)));
    }
}
