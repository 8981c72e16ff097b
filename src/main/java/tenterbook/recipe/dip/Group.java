package tenterbook.recipe.dip;

import tenterbook.words.Refusal;

/**
 * Pieces that may share a curve: one kind of cloth in one vat. Compared as written.
 *
 * @param cloth what the maker calls the cloth, not null
 * @param vat what the maker calls the vat, not null
 */
public record Group(String cloth, String vat) {
    public Group {
        if (cloth == null || vat == null) {
            throw Refusal.of("recipe.group", "cloth", String.valueOf(cloth), "vat", String.valueOf(vat));
        }
    }
}
