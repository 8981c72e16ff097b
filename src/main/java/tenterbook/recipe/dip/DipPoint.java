package tenterbook.recipe.dip;

import tenterbook.colour.ShadeReading;

/**
 * What one piece has to say about the vat.
 *
 * @param dips how many it had
 * @param shade how deep it came out
 * @param source the piece, as the maker finds it again: its number
 * @param group its cloth and vat
 */
public record DipPoint(DipCount dips, ShadeReading shade, String source, Group group) {
    public DipPoint {
        if (dips == null || shade == null || source == null || source.isBlank() || group == null) {
            throw new IllegalArgumentException(
                    "A point of a dip curve has dips, a shade, the number of its piece and a group; found: %s, %s, %s, %s"
                            .formatted(dips, shade, source, group));
        }
    }

    double ks() {
        return shade.ks();
    }
}
