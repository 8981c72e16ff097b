package tenterbook.labelling.rule;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Fibre content, origin and maker in the exact words of one market.
 *
 * <p>With a refusal there are no content lines at all. A question does not block the label.
 *
 * @param version of the rule table
 * @param lines as printed, in order
 * @param coverage whether the rule covers this kind of piece; null where that is not known
 * @param notice the notice that this is not legal advice
 */
public record FibreStatement(
        Market market,
        String version,
        List<FibreLine> lines,
        List<LabelRefusal> refusals,
        List<Question> questions,
        @Nullable Rule coverage,
        String notice) {
    public FibreStatement {
        lines = List.copyOf(lines);
        refusals = List.copyOf(refusals);
        questions = List.copyOf(questions);
    }

    /** The statement for an article. */
    public static FibreStatement of(Market market, Article article) {
        RuleTable rules = market.rules().of(article.components());
        List<LabelRefusal> refusals = new ArrayList<>();
        List<Question> questions = new ArrayList<>();
        List<FibreLine> lines = new ArrayList<>(content(rules, article, refusals, questions));
        if (!refusals.isEmpty()) {
            lines.clear();
        }
        AnimalParts.line(rules, article.trims(), questions).ifPresent(line -> {
            lines.add(line);
            lines.addAll(besides(rules, article, line, questions));
        });
        lines.addAll(OriginWords.lines(rules, article, refusals, questions));
        lines.addAll(MakerLines.lines(rules, article, refusals, questions));
        rules.rules().values().stream()
                .filter(rule -> rule.when().equals("always"))
                .map(rule -> rule.asked(""))
                .forEach(questions::add);
        questions.addAll(rules.asked("words", article.words() + " " + article.trims()));
        questions.addAll(rules.asked("trims", article.trims()));
        Rule coverage = null;
        if (article.category() != null) {
            coverage = rules.coverage(article.category()).orElse(null);
            questions.addAll(rules.asked("category", article.category().name()));
        }
        return new FibreStatement(market, rules.version(), lines, refusals, questions, coverage, rules.notice());
    }

    private static List<FibreLine> content(
            RuleTable rules, Article article, List<LabelRefusal> refusals, List<Question> questions) {
        List<Component> components = article.components();
        if (components.isEmpty()) {
            refusals.add(new LabelRefusal(
                    Message.of("rules.statement.no-cloth"),
                    rules.rule("missing"),
                    Message.of("rules.statement.name-cloth"),
                    LabelRefusal.Mend.CLOTH));
            return List.of();
        }
        Map<String, List<FibreLine>> byContent = new LinkedHashMap<>();
        Map<String, String> partsByContent = new LinkedHashMap<>();
        for (Component component : components) {
            List<FibreLine> lines = new ContentWords(rules, component, article.studio(), refusals, questions).lines();
            if (!lines.isEmpty()) {
                byContent.putIfAbsent(lines.get(0).text(), lines);
                partsByContent.merge(lines.get(0).text(), component.label(), (a, b) -> a.equals(b) ? a : a + ", " + b);
            }
        }
        if (byContent.size() < 2) {
            return byContent.values().stream().flatMap(List::stream).toList();
        }
        components.stream()
                .filter(c -> c.part().isEmpty())
                .map(c -> new Question(
                        Message.of("rules.statement.which-part", "cloth", c.cloth()), rules.rule("components")))
                .forEach(questions::add);
        if (byContent.values().stream()
                .flatMap(List::stream)
                .anyMatch(line -> !line.note().isEmpty())) {
            questions.add(new Question(Message.of("rules.statement.parts-in-one-language"), rules.rule("language")));
        }
        List<FibreLine> labelled = new ArrayList<>();
        byContent.forEach((first, lines) -> lines.forEach(line -> labelled.add(new FibreLine(
                FibreLine.Kind.CONTENT,
                Written.capital(partsByContent.get(first)) + ": " + line.text(),
                rules.rule("components"),
                line.note()))));
        return labelled;
    }

    /** A line again in each language that the maker entered words in. */
    private static List<FibreLine> besides(RuleTable rules, Article article, FibreLine line, List<Question> questions) {
        List<FibreLine> lines = new ArrayList<>();
        if (rules.otherUse() != Language.Use.BESIDE) {
            return lines;
        }
        for (Language language : rules.otherLanguages()) {
            OtherNames names = new OtherNames(rules, language, article.studio());
            Optional<OtherNames.Name> phrase = names.phrase(rules.animalPhrase());
            phrase.ifPresent(p -> lines.add(new FibreLine(line.kind(), p.text(), line.rule(), p.by())));
            if (names.begun() && phrase.isEmpty()) {
                questions.add(new Question(
                        Message.of(
                                "rules.statement.phrase", "phrase", rules.animalPhrase(), "language", language.name()),
                        rules.rule("language")));
            }
        }
        return lines;
    }

    /** The lines of one kind, in order. */
    public List<FibreLine> lines(FibreLine.Kind kind) {
        return lines.stream().filter(line -> line.kind() == kind).toList();
    }
}
