package tenterbook.colour.compare;

import java.util.ArrayList;
import java.util.List;
import tenterbook.colour.Interval;

/**
 * A change in plain words, told from where it may lie and never from its middle value. The steps of ΔE00 are those of {@link
 * tenterbook.colour.DifferenceWords}: common practice, not a standard.
 */
public final class ChangeWords {
    /** ΔE00 below which an eye sees nothing, or hardly anything, even side by side. */
    static final double SEEN = 1;

    /** ΔL*, Δa* or Δb* too small to be worth a word, however well it is known. */
    private static final double LEAST = 0.5;

    private ChangeWords() {}

    /** Whether even the least change that the interval allows can be seen. */
    public static boolean told(RegionChange change) {
        return change.ciede2000().low() >= SEEN;
    }

    /** As in 'no change can be told: between none and a plain one'; for a change that is {@link #told}, how great it is. */
    public static String size(Interval ciede2000) {
        String low = step(ciede2000.low());
        String high = step(ciede2000.high());
        if (ciede2000.low() >= SEEN) {
            return low.equals(high) ? low : "between " + low + " and " + high;
        }
        if (!low.equals(high)) {
            return "no change can be told: between " + low + " and " + high;
        }
        return low.equals("none") ? "no change can be told" : "no change can be told: " + low + " at most";
    }

    private static String step(double dE00) {
        if (dE00 < 0.5) {
            return "none";
        }
        if (dE00 < SEEN) {
            return "hardly any";
        }
        if (dE00 < 2) {
            return "a just noticeable one";
        }
        if (dE00 < 3.5) {
            return "a noticeable one";
        }
        if (dE00 < 5) {
            return "a clear one";
        }
        return dE00 < 10 ? "a plain one" : "a great one";
    }

    /**
     * As in 'paler, yellower': only what is larger than its own doubt.
     *
     * @param allowance ΔE that light and camera are allowed, 0 or more; it widens every part's interval
     * @return empty where no part of the change has a direction that can be told
     */
    public static String directions(RegionChange change, double allowance) {
        List<String> words = new ArrayList<>();
        add(words, change.lightness(), allowance, "paler", "darker");
        add(words, change.a(), allowance, "redder", "greener");
        add(words, change.b(), allowance, "yellower", "bluer");
        return String.join(", ", words);
    }

    private static void add(List<String> words, Interval part, double allowance, String more, String less) {
        double middle = (part.low() + part.high()) / 2;
        if (part.low() > allowance && middle >= LEAST) {
            words.add(more);
        } else if (part.high() < -allowance && middle <= -LEAST) {
            words.add(less);
        }
    }
}
