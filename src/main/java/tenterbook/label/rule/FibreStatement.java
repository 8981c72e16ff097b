package tenterbook.label.rule;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tenterbook.piece.Category;

/**
 * Fibre content and origin in the exact words of one market.
 *
 * <p>With a refusal there are no content lines: half a statement is none. A question does not stop the label.
 *
 * @param version of the rule table
 * @param lines as printed, in order
 * @param coverage whether the rule covers this kind of piece, where that is known
 * @param notice that this is no legal advice
 */
public record FibreStatement(
        Market market,
        String version,
        List<FibreLine> lines,
        List<Refusal> refusals,
        List<Question> questions,
        Optional<Rule> coverage,
        String notice) {
    public FibreStatement {
        lines = List.copyOf(lines);
        refusals = List.copyOf(refusals);
        questions = List.copyOf(questions);
    }

    /**
     * The statement for a piece.
     *
     * @param components its cloths; empty where none is recorded
     * @param dyedIn country of the dyeing; empty where not recorded
     * @param trims what is on it besides cloth, in the maker's words
     */
    public static FibreStatement of(
            Market market, Category category, List<Component> components, String dyedIn, String trims) {
        RuleTable rules = market.rules();
        List<Refusal> refusals = new ArrayList<>();
        List<Question> questions = new ArrayList<>();
        List<FibreLine> lines = new ArrayList<>(content(rules, components, refusals, questions));
        if (!refusals.isEmpty()) {
            lines.clear();
        }
        String plainTrims = " " + trims.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}-]+", " ") + " ";
        if (rules.animalWords().stream()
                .anyMatch(word -> plainTrims.contains(" " + word + " ") || plainTrims.contains(" " + word + "s "))) {
            lines.add(new FibreLine(FibreLine.Kind.ANIMAL_PARTS, rules.animalPhrase() + ".", rules.rule("animal")));
        }
        lines.addAll(OriginWords.lines(rules, components, dyedIn, questions));
        Optional<Rule> coverage = Optional.ofNullable(rules.coverage().get(category));
        return new FibreStatement(market, rules.version(), lines, refusals, questions, coverage, rules.notice());
    }

    private static List<FibreLine> content(
            RuleTable rules, List<Component> components, List<Refusal> refusals, List<Question> questions) {
        if (components.isEmpty()) {
            refusals.add(new Refusal(
                    "Fibre content not recorded: no cloth is told for this piece",
                    rules.rule("missing"),
                    "Name the cloth in the clamping, and its fibres on the cloth's page"));
            return List.of();
        }
        Map<String, FibreLine> byContent = new LinkedHashMap<>();
        Map<String, String> partsByContent = new LinkedHashMap<>();
        for (Component component : components) {
            new ContentWords(rules, component, refusals, questions).line().ifPresent(line -> {
                byContent.putIfAbsent(line.text(), line);
                partsByContent.merge(line.text(), component.label(), (a, b) -> a.equals(b) ? a : a + ", " + b);
            });
        }
        if (byContent.size() < 2) {
            return List.copyOf(byContent.values());
        }
        components.stream()
                .filter(c -> c.part().isEmpty())
                .map(c -> new Question(
                        "Which part of the piece is the cloth “%s”? Until that is said the cloth's own name stands before its fibres"
                                .formatted(c.cloth()),
                        rules.rule("components")))
                .forEach(questions::add);
        return byContent.values().stream()
                .map(line -> new FibreLine(
                        FibreLine.Kind.CONTENT,
                        capital(partsByContent.get(line.text())) + ": " + line.text(),
                        rules.rule("components")))
                .toList();
    }

    static String capital(String text) {
        return text.isEmpty()
                ? text
                : text.substring(0, text.offsetByCodePoints(0, 1)).toUpperCase(Locale.ROOT)
                        + text.substring(text.offsetByCodePoints(0, 1));
    }

    /** The lines of one kind, in order. */
    public List<FibreLine> lines(FibreLine.Kind kind) {
        return lines.stream().filter(line -> line.kind() == kind).toList();
    }
}
