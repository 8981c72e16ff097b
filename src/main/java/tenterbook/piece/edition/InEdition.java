package tenterbook.piece.edition;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Refusal;

/**
 * The edition or set that a piece belongs to, beside its place in it.
 *
 * @param name by which pieces belong together, in any case of its letters; empty where not recorded
 * @param enlargedFrom how many the edition was announced with at its first sale, where it was enlarged after it; else null
 * @param enlargedTo how many it has since; null with {@code enlargedFrom}
 */
public record InEdition(
        String name,
        @Nullable Integer enlargedFrom,
        @Nullable Integer enlargedTo) {
    public static final InEdition NONE = new InEdition("", null, null);

    public InEdition {
        name = name == null ? "" : name.strip().replaceAll("\\s+", " ");
        if ((enlargedFrom == null) != (enlargedTo == null)
                || enlargedFrom != null && (enlargedFrom < 1 || enlargedFrom >= enlargedTo)) {
            throw Refusal.of("edition.enlarged-wrongly");
        }
    }

    public boolean enlarged() {
        return enlargedFrom != null;
    }

    public InEdition enlarged(int from, int to) {
        return new InEdition(name, from, to);
    }

    /** Equal for names that mean the same edition. */
    public String key() {
        return key(name);
    }

    public static String key(String name) {
        return name.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
