package tenterbook.recipe.dip;

import tenterbook.colour.compare.ShadeReading;
import tenterbook.words.Refusal;

/**
 * A measured piece as a point of a dip curve.
 *
 * @param dips how many it had
 * @param shade its depth
 * @param source the piece's number
 * @param group its cloth and vat
 */
public record DipPoint(DipCount dips, ShadeReading shade, String source, Group group) {
    public DipPoint {
        if (dips == null || shade == null || source == null || source.isBlank() || group == null) {
            throw Refusal.of(
                    "recipe.dip-point",
                    "dips",
                    String.valueOf(dips),
                    "shade",
                    String.valueOf(shade),
                    "source",
                    String.valueOf(source),
                    "group",
                    String.valueOf(group));
        }
    }

    double ks() {
        return shade.ks();
    }
}
