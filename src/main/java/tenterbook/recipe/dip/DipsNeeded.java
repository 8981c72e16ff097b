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
 * @param best dips, a fraction: as likely too many as too few. 0 where the depth is there already, infinite where none suffice
 * @param plausible holds the dips of nine in ten pieces, and {@code best}
 * @param evidence the measured pieces nearest in depth, nearest first; at most three
 */
public record DipsNeeded(Verdict verdict, boolean more, double best, Interval plausible, List<DipPoint> evidence) {
    public enum Verdict {
        /** Within the depths and dips of the measured pieces. */
        WITHIN,
        /** Extrapolated: lighter, or fewer dips, than any measured piece. */
        BELOW_SEEN,
        /** Extrapolated: deeper, or more dips, than any measured piece. */
        BEYOND_SEEN,
        /** Deeper than twice the most dips seen would plausibly give. */
        NOT_REACHABLE,
        /** Lighter than one dip plausibly gives, or no deeper than the piece already is. */
        ALREADY_DEEPER
    }

    public DipsNeeded {
        evidence = List.copyOf(evidence);
    }

    /** The same answer with an interval that also holds these dips, which a piece of the same colour has had. */
    public DipsNeeded holding(DipCount dips) {
        Interval wider = new Interval(Math.min(plausible.low(), dips.low()), Math.max(plausible.high(), dips.high()));
        return new DipsNeeded(verdict, more, best, wider, evidence);
    }

    public Written sentence() {
        return switch (verdict) {
            case ALREADY_DEEPER -> Message.of(more ? "recipe.needed.piece-deeper" : "recipe.needed.one-dip-deeper");
            case NOT_REACHABLE -> Message.of("recipe.needed.out-of-reach");
            case BELOW_SEEN -> about("recipe.needed.below-seen");
            case BEYOND_SEEN -> about("recipe.needed.beyond-seen");
            case WITHIN -> about("recipe.needed.within");
        };
    }

    private Message about(String key) {
        return Message.of(
                key,
                "best",
                NumberWords.decimals(best, 1),
                "more",
                more,
                "low",
                NumberWords.decimals(plausible.low(), 1),
                "high",
                NumberWords.decimals(plausible.high(), 1));
    }
}
