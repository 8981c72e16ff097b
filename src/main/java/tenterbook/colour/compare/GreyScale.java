package tenterbook.colour.compare;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import tenterbook.colour.space.Interval;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;

/**
 * The step of the grey scale for change in colour that is nearest to a difference.
 *
 * <p>The grey scale is nine pairs of grey chips, 5 (no change) down to 1 in halves, each with a stated CIE 1976 colour
 * difference; a person compares the change of the cloth with them under a lamp. A computed grade is an estimate and says so.
 * The scale for staining is another one.
 *
 * @see "ISO 105-A02:1993, clause 2.4, for the chips; their numbers and the uncertainty of these stand in grey-scale.csv"
 */
public final class GreyScale {
    /** From 5 down to 1. */
    public static final List<Chip> CHIPS = chips("grey-scale.csv");

    /**
     * One pair of chips.
     *
     * @param grade as written: {@code 5}, {@code 4-5}, ... {@code 1}
     * @param difference ΔE*ab of the pair
     */
    public record Chip(String grade, double difference) {}

    /**
     * A grade with its bounds.
     *
     * @param grade nearest grade, as written
     * @param best best grade that the measurement allows
     * @param worst worst grade that the measurement allows
     * @param difference the measured ΔE*ab
     */
    public record Estimate(String grade, String best, String worst, double difference) {
        /** One sentence, which says that it is an estimate. */
        public Message sentence() {
            return best.equals(worst)
                    ? Message.of("colour.grey-scale", "grade", grade, "difference", NumberWords.decimals(difference, 1))
                    : Message.of(
                            "colour.grey-scale-range",
                            "grade",
                            grade,
                            "worst",
                            worst,
                            "best",
                            best,
                            "difference",
                            NumberWords.decimals(difference, 1));
        }
    }

    private GreyScale() {}

    /**
     * The estimate for a measured change.
     *
     * @param cie1976 ΔE*ab, 0 or more; CIEDE2000 differences are not on this scale
     * @param plausible its interval, 0 or more
     * @throws IllegalStateException if a difference is negative, NaN or infinite
     */
    public static Estimate estimate(double cie1976, Interval plausible) {
        return new Estimate(nearest(cie1976), nearest(plausible.low()), nearest(plausible.high()), cie1976);
    }

    /** The grade whose chips differ most nearly by this ΔE*ab; the worse of two equally near. */
    static String nearest(double cie1976) {
        checked(cie1976);
        int i = 0;
        while (i + 1 < CHIPS.size() && cie1976 >= (CHIPS.get(i).difference + CHIPS.get(i + 1).difference) / 2) {
            i++;
        }
        return CHIPS.get(i).grade;
    }

    private static void checked(double difference) {
        if (!(difference >= 0) || Double.isInfinite(difference)) {
            throw new IllegalStateException("A colour difference is 0 or more and finite; found: " + difference);
        }
    }

    private static List<Chip> chips(String name) {
        List<Chip> chips = new ArrayList<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(GreyScale.class.getResourceAsStream(name), name), StandardCharsets.UTF_8))) {
            reader.lines().filter(line -> !line.startsWith("#")).skip(1).forEach(line -> {
                String[] cells = line.split(",");
                chips.add(new Chip(cells[0], Double.parseDouble(cells[1])));
            });
        } catch (IOException e) {
            throw new UncheckedIOException("The program's own table " + name + " cannot be read", e);
        }
        return List.copyOf(chips);
    }
}
