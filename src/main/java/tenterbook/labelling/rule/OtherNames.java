package tenterbook.labelling.rule;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tenterbook.piece.LocalName;
import tenterbook.piece.Studio;
import tenterbook.words.Message;

/** Words in another language: the few whose source was read, else those that the maker entered. Nothing is translated. */
final class OtherNames {
    /**
     * A word in another language.
     *
     * @param by source of the word, as part of a sentence
     */
    record Name(String text, String by) {}

    /** The term for fibres under the least share. */
    static final String OTHER_FIBRE = "other fibre";

    private final RuleTable rules;
    private final Language language;
    private final List<LocalName> entered;

    OtherNames(RuleTable rules, Language language, Studio studio) {
        this.rules = rules;
        this.language = language;
        this.entered = studio.names().stream()
                .filter(name -> language.servedBy(name.language()))
                .toList();
    }

    Language language() {
        return language;
    }

    /** Whether the maker entered anything in this language. */
    boolean begun() {
        return !entered.isEmpty();
    }

    Optional<Name> of(FibreNames.Fibre fibre) {
        FibreNames.Printed own = fibre.names(rules.market(), language.tag());
        if (own.read() && !own.names().isEmpty()) {
            return Optional.of(new Name(own.names().get(0), read(fibre.fibre(), own.source())));
        }
        Set<String> terms = new TreeSet<>(fibre.entries());
        terms.add(fibre.fibre());
        return entered(terms, fibre.fibre());
    }

    /** @param several whether it stands for more than one fibre */
    Optional<Name> otherFibre(boolean several) {
        String both = rules.otherLocal().get(language.tag());
        String own = both == null ? null : both.split("\\|")[several ? 1 : 0];
        return own != null
                ? Optional.of(
                        new Name(own, read(OTHER_FIBRE, rules.rule("small").citation())))
                : entered(Set.of(OTHER_FIBRE, "other fiber", "other fibres", "other fibers"), OTHER_FIBRE);
    }

    Optional<Name> phrase(String english) {
        return entered(Set.of(english.toLowerCase(Locale.ROOT)), english);
    }

    private Optional<Name> entered(Set<String> terms, String what) {
        return entered.stream()
                .filter(name -> terms.contains(name.term()
                        .toLowerCase(Locale.ROOT)
                        .replaceAll("[\\s.]+", " ")
                        .strip()))
                .findFirst()
                .map(name -> new Name(
                        name.name(),
                        Message.of(
                                        "rules.name.entered-by",
                                        "language",
                                        language.name(),
                                        "term",
                                        what,
                                        "person",
                                        name.enteredBy())
                                .inEnglish()));
    }

    private String read(String what, String source) {
        return Message.of("rules.name.read-in", "language", language.name(), "term", what, "source", source)
                .inEnglish();
    }
}
