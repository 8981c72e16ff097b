package tenterbook.recipe.dip;

import java.util.List;
import tenterbook.colour.space.Interval;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * How many dips, or how many more, give a depth, with the pieces that support the estimate.
 *
 * @param verdict kind of answer; decides whether the number is usable
 * @param more whether the dips come on top of those the piece has had
 * @param best dips, a fraction; 0 where the depth is there already, infinite where none suffice
 * @param plausible 95 % interval for one further piece; the high end is infinite where unbounded
 * @param evidence the measured pieces nearest to the answer, nearest first; at most six
 */
public record DipsNeeded(Verdict verdict, boolean more, double best, Interval plausible, List<DipPoint> evidence) {
    public enum Verdict {
        /** Within the range of dips seen. */
        WITHIN,
        /** On the curve, but beyond the dips of any measured piece. */
        BEYOND_SEEN,
        /** Deeper than the shade at which this curve plausibly levels off. */
        NOT_REACHABLE,
        /** No deeper than the cloth, or the piece, already is. */
        ALREADY_DEEPER
    }

    public DipsNeeded {
        evidence = List.copyOf(evidence);
    }

    public Written sentence() {
        return switch (verdict) {
            case ALREADY_DEEPER -> Message.of(more ? "recipe.needed.piece-deeper" : "recipe.needed.cloth-deeper");
            case NOT_REACHABLE -> Message.of("recipe.needed.out-of-reach");
            case BEYOND_SEEN ->
                Double.isFinite(best)
                        ? Message.of("recipe.needed.beyond-seen-about", "best", number(best), "more", more)
                        : Message.of("recipe.needed.beyond-seen");
            case WITHIN ->
                plausible.bounded()
                        ? Message.of(
                                "recipe.needed.within",
                                "best",
                                number(best),
                                "more",
                                more,
                                "low",
                                number(plausible.low()),
                                "high",
                                number(plausible.high()))
                        : Message.of(
                                "recipe.needed.within-open",
                                "best",
                                number(best),
                                "more",
                                more,
                                "low",
                                number(plausible.low()));
        };
    }

    private static Written number(double dips) {
        return NumberWords.decimals(dips, 1);
    }
}
