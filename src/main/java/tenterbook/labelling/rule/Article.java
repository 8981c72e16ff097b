package tenterbook.labelling.rule;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tenterbook.piece.Category;
import tenterbook.piece.Studio;

/**
 * A thing to be labelled, with the facts that the rules of fibre, origin and maker need.
 *
 * @param components its cloths; empty where none is recorded
 * @param dyedIn country of the dyeing; empty where not recorded
 * @param trims parts other than cloth, in the maker's words
 * @param studio who makes it, and the words it entered in other languages
 * @param words all other words on the label
 */
public record Article(
        @Nullable Category category,
        List<Component> components,
        String dyedIn,
        String trims,
        Studio studio,
        String words) {
    public Article {
        components = components == null ? List.of() : List.copyOf(components);
        dyedIn = dyedIn == null ? "" : dyedIn.strip();
        trims = trims == null ? "" : trims.strip();
        studio = studio == null ? Studio.UNNAMED : studio;
        words = words == null ? "" : words.strip();
    }

    boolean saidToBeImported() {
        return words.toLowerCase(Locale.ROOT).contains("import");
    }
}
