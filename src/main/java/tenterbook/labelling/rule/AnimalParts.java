package tenterbook.labelling.rule;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tenterbook.words.Message;

/** Detects non-textile parts of animal origin, and the statement they require. */
final class AnimalParts {
    private AnimalParts() {}

    static Optional<FibreLine> line(RuleTable rules, String trims, List<Question> questions) {
        if (rules.animalPhrase().isEmpty() || trims.isBlank()) {
            return Optional.empty();
        }
        Rule rule = rules.rule("animal");
        String plain = " " + trims.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}-]+", " ") + " ";
        for (String unlike : rules.animalUnlike()) {
            if (plain.contains(" " + unlike + " ")) {
                questions.add(new Question(Message.of("rules.animal.unlike", "trims", trims, "word", unlike), rule));
                return Optional.empty();
            }
        }
        boolean read = named(rules.animalWords(), plain);
        boolean remembered = named(rules.animalUnread(), plain);
        if (!read && remembered) {
            questions.add(new Question(Message.of("rules.animal.from-memory", "trims", trims), rule));
        }
        if (read || remembered) {
            return Optional.of(new FibreLine(FibreLine.Kind.ANIMAL_PARTS, rules.animalPhrase() + ".", rule));
        }
        if (!named(rules.plainTrims(), plain)) {
            questions.add(new Question(Message.of("rules.animal.unknown", "trims", trims), rule));
        }
        return Optional.empty();
    }

    private static boolean named(List<String> words, String plain) {
        return words.stream().anyMatch(word -> plain.contains(" " + word + " ") || plain.contains(" " + word + "s "));
    }
}
