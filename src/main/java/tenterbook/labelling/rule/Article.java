package tenterbook.labelling.rule;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.piece.Category;
import tenterbook.piece.Studio;
import tenterbook.piece.label.ComponentKind;
import tenterbook.piece.label.LabelFacts;
import tenterbook.piece.label.PieceComponent;

/**
 * A thing to be labelled, with the facts that the rules of fibre, origin and maker need.
 *
 * @param components its cloths; empty where none is recorded
 * @param dyedIn country of the dyeing; empty where not recorded
 * @param trims parts other than cloth, in the maker's words
 * @param studio who makes it, and the words it entered in other languages
 * @param words all other words on the label
 * @param facts what else the rules ask of it; its country of sale is that of this sale
 */
public record Article(
        @Nullable Category category,
        List<Component> components,
        String dyedIn,
        String trims,
        Studio studio,
        String words,
        LabelFacts facts) {
    public Article {
        components = components == null ? List.of() : List.copyOf(components);
        dyedIn = dyedIn == null ? "" : dyedIn.strip();
        trims = trims == null ? "" : trims.strip();
        studio = studio == null ? Studio.UNNAMED : studio;
        words = words == null ? "" : words.strip();
        facts = facts == null ? LabelFacts.NONE : facts;
    }

    /** An article of cloth alone, whose sale is not known. */
    public Article(
            @Nullable Category category,
            List<Component> components,
            String dyedIn,
            String trims,
            Studio studio,
            String words) {
        this(category, components, dyedIn, trims, studio, words, LabelFacts.NONE);
    }

    /** Its trims in the words of the record, without those whose parts are recorded. */
    String trimsBesideParts() {
        Set<String> named = facts.components().stream()
                .flatMap(part -> Stream.of(Rule.plain(part.name()).split(" ")))
                .collect(Collectors.toSet());
        return Stream.of(Rule.plain(trims).split(" "))
                .filter(word -> !named.contains(word))
                .collect(Collectors.joining(" "));
    }

    /** Trims, and the parts of which no fibres are recorded. */
    String trimsAndParts() {
        return Stream.concat(
                        Stream.of(trims),
                        facts.components().stream()
                                .filter(part -> part.fibres().isEmpty())
                                .map(PieceComponent::name))
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining("; "));
    }

    boolean has(ComponentKind kind) {
        return facts.components().stream().anyMatch(part -> part.kind() == kind);
    }

    boolean saidToBeImported() {
        return words.toLowerCase(Locale.ROOT).contains("import");
    }
}
