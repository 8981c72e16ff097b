package tenterbook.colour.compare;

import java.util.ArrayList;
import java.util.List;
import tenterbook.colour.space.DifferenceWords;
import tenterbook.colour.space.Interval;
import tenterbook.measure.Threshold;
import tenterbook.words.Message;

/**
 * A change in plain words, from its interval and never from its middle value. The steps of ΔE00 are those of {@link
 * tenterbook.colour.space.DifferenceWords}: common practice, not a standard.
 */
public final class ChangeWords {
    /** ΔE00 below which the eye sees little or nothing even side by side. */
    static final double SEEN = Threshold.number("change-seen");

    /** ΔL*, Δa* or Δb* below which no direction is named, however certain. */
    private static final double LEAST = Threshold.number("change-direction");

    private static final List<String> STEPS =
            List.of("none", "hardly", "just", "noticeable", "clear", "plain", "great");

    private ChangeWords() {}

    /** Whether even the least change in the interval is visible. */
    public static boolean visible(RegionChange change) {
        return change.ciede2000().low() >= SEEN;
    }

    /** The size of a change; where it is not {@link #visible}, a sentence that says so with the limits of its interval. */
    public static Message size(Interval ciede2000) {
        Message low = step(ciede2000.low());
        Message high = step(ciede2000.high());
        if (ciede2000.low() >= SEEN) {
            return low.equals(high) ? low : Message.of("change.between", "low", low, "high", high);
        }
        if (!low.equals(high)) {
            return Message.of("change.not-told-between", "low", low, "high", high);
        }
        return DifferenceWords.step(ciede2000.high()) == 0
                ? Message.of("change.not-told")
                : Message.of("change.not-told-at-most", "most", low);
    }

    /**
     * Whether a change cannot be told from what two photographs of an unchanged cloth differ by.
     *
     * @param allowance ΔE00 that nine in ten colours of one cloth differ by between two such photographs; 0 where it is not known
     */
    public static boolean notApart(RegionChange change, double allowance) {
        return change.change().ciede2000() <= allowance;
    }

    private static Message step(double dE00) {
        return Message.of("change.step." + STEPS.get(DifferenceWords.step(dE00)));
    }

    /**
     * As in 'paler, yellower': only components larger than their uncertainty.
     *
     * @param allowance ΔE due to light and camera, 0 or more; it widens the interval of every component
     * @return empty where no component has a certain direction
     */
    public static List<Message> directions(RegionChange change, double allowance) {
        List<Message> words = new ArrayList<>();
        add(words, change.lightness(), allowance, "change.paler", "change.darker");
        add(words, change.a(), allowance, "change.redder", "change.greener");
        add(words, change.b(), allowance, "change.yellower", "change.bluer");
        return words;
    }

    private static void add(List<Message> words, Interval part, double allowance, String more, String less) {
        double middle = (part.low() + part.high()) / 2;
        if (part.low() > allowance && middle >= LEAST) {
            words.add(Message.of(more));
        } else if (part.high() < -allowance && middle <= -LEAST) {
            words.add(Message.of(less));
        }
    }
}
