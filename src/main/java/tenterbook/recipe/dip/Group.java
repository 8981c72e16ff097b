package tenterbook.recipe.dip;

/**
 * Pieces that may share a curve: one kind of cloth in one vat. Compared as written.
 *
 * @param cloth what the maker calls the cloth, not null
 * @param vat what the maker calls the vat, not null
 */
public record Group(String cloth, String vat) {
    public Group {
        if (cloth == null || vat == null) {
            throw new IllegalArgumentException("A group names its cloth and its vat; found: " + cloth + ", " + vat);
        }
    }
}
