package tenterbook.label.rule;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Whether something on a piece comes from an animal and is no textile, and what must then be said. */
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
                questions.add(new Question(
                        "Is anything of “%s” of animal origin? The words say %s, so nothing is printed"
                                .formatted(trims, unlike),
                        rule));
                return Optional.empty();
            }
        }
        boolean read = named(rules.animalWords(), plain);
        boolean remembered = named(rules.animalUnread(), plain);
        if (!read && remembered) {
            questions.add(new Question(
                    "Does “%s” count as a part of animal origin? That it does is from memory".formatted(trims), rule));
        }
        if (read || remembered) {
            return Optional.of(new FibreLine(FibreLine.Kind.ANIMAL_PARTS, rules.animalPhrase() + ".", rule));
        }
        if (!named(rules.plainTrims(), plain)) {
            questions.add(new Question(
                    "Is anything of “%s” of horn, bone, leather, feather, fur or another part of an animal? Its words do not tell"
                            .formatted(trims),
                    rule));
        }
        return Optional.empty();
    }

    private static boolean named(List<String> words, String plain) {
        return words.stream().anyMatch(word -> plain.contains(" " + word + " ") || plain.contains(" " + word + "s "));
    }
}
