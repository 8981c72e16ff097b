package tenterbook.recipe.dip;

import java.util.List;
import java.util.Locale;
import tenterbook.colour.Interval;

/**
 * How many dips give a depth, or how many more; with the pieces that speak for it.
 *
 * @param verdict what kind of answer this is; read it before the number
 * @param target K/S asked for
 * @param more whether the dips come on top of those the piece has had
 * @param best dips, a fraction; 0 where the depth is there already, infinite where none suffice
 * @param plausible where one further piece plausibly needs to be, 95 %; the high end is infinite where unbounded
 * @param evidence the measured pieces nearest to the answer, nearest first; at most six
 */
public record DipsNeeded(
        Verdict verdict, double target, boolean more, double best, Interval plausible, List<DipPoint> evidence) {
    /** Plain verdicts. */
    public enum Verdict {
        /** Between what the archive has seen. */
        WITHIN,
        /** The curve goes there, but no piece measured has had so many dips. */
        BEYOND_SEEN,
        /** Deeper than the shade at which this curve plausibly levels off. */
        NOT_REACHABLE,
        /** No deeper than the cloth, or the piece, already is. */
        ALREADY_DEEPER
    }

    public DipsNeeded {
        evidence = List.copyOf(evidence);
    }

    /** One sentence for the maker. */
    public String sentence() {
        String dips = more ? "more dips" : "dips";
        return switch (verdict) {
            case ALREADY_DEEPER ->
                more
                        ? "The piece is that deep already, as far as the curve can tell."
                        : "That is no deeper than the cloth before its first dip.";
            case NOT_REACHABLE -> "Out of reach: the shade levels off below that depth, however many dips are given.";
            case BEYOND_SEEN ->
                "More dips than any measured piece has had%s: try it on a sample first."
                        .formatted(Double.isFinite(best) ? ", about " + number(best) + " " + dips : "");
            case WITHIN -> "About %s %s%s.".formatted(number(best), dips, span());
        };
    }

    private String span() {
        return plausible.bounded()
                ? " (plausibly %s to %s)".formatted(number(plausible.low()), number(plausible.high()))
                : " (plausibly %s or more; the points set no upper end)".formatted(number(plausible.low()));
    }

    private static String number(double dips) {
        return String.format(Locale.ROOT, "%.1f", dips);
    }
}
