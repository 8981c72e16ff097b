package tenterbook.recipe.dip;

import tenterbook.words.Refusal;

/**
 * A measured piece as a point of a dip curve.
 *
 * @param dips how many it had
 * @param ks its depth of shade K/S, above 0 and finite
 * @param source the piece's number
 */
public record DipPoint(DipCount dips, double ks, String source) {
    /** @throws IllegalArgumentException if the depth is no number above 0, or the dips or the piece are missing */
    public DipPoint {
        if (dips == null || !(ks > 0) || Double.isInfinite(ks) || source == null || source.isBlank()) {
            throw Refusal.of(
                    "recipe.dip-point",
                    "dips",
                    String.valueOf(dips),
                    "ks",
                    String.valueOf(ks),
                    "source",
                    String.valueOf(source));
        }
    }

    double logDepth() {
        return Math.log(ks);
    }
}
