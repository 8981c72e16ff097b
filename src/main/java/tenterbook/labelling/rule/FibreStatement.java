package tenterbook.labelling.rule;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.piece.label.ComponentKind;
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
        List<Component> parts =
                article.facts().components().stream().map(Component::of).toList();
        RuleTable rules = market.rules()
                .of(Stream.concat(article.components().stream(), parts.stream()).toList());
        List<LabelRefusal> refusals = new ArrayList<>();
        List<Question> questions = new ArrayList<>();
        List<FibreLine> lines = new ArrayList<>(content(rules, article, refusals, questions));
        if (!refusals.isEmpty()) {
            lines.clear();
        }
        AnimalParts.line(rules, article.trimsAndParts(), questions).ifPresent(line -> {
            lines.add(line);
            lines.addAll(besides(rules, article, line, questions));
        });
        lines.addAll(OriginWords.lines(rules, article, refusals, questions));
        lines.addAll(MakerLines.lines(rules, article, refusals, questions));
        rules.rules().values().stream()
                .filter(rule -> rule.when().equals("always"))
                .flatMap(rule -> SaleQuestions.always(article, rule).stream())
                .forEach(questions::add);
        List<Question> asksOfWords = rules.asked("words", article.words() + " " + article.trims());
        questions.addAll(asksOfWords);
        questions.addAll(rules.asked("trims", article.trimsBesideParts()));
        questions.removeIf(question -> SaleQuestions.answered(article, question.rule())
                || asksOfWords.contains(question)
                        && question.rule().id().equals("embroidered")
                        && article.has(ComponentKind.EMBROIDERY));
        questions.addAll(SaleQuestions.of(rules, article, questions));
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
        PartsBesideCloth.Decided beside = PartsBesideCloth.of(rules, article, refusals, questions);
        Map<String, List<FibreLine>> byContent = new LinkedHashMap<>();
        Map<String, String> partsByContent = new LinkedHashMap<>();
        for (Component component : all(components, beside)) {
            List<LabelRefusal> why = new ArrayList<>();
            boolean part = beside.stated().contains(component);
            List<FibreLine> lines = new ContentWords(rules, component, article.studio(), why, questions).lines();
            why.forEach(each -> refusals.add(part ? new LabelRefusal(each.found(), each.rule(), each.fix()) : each));
            lines = part ? lines : excluding(rules, lines, beside.leftOut());
            if (!lines.isEmpty()) {
                byContent.putIfAbsent(lines.get(0).text(), lines);
                partsByContent.merge(lines.get(0).text(), component.label(), (a, b) -> a.equals(b) ? a : a + ", " + b);
            }
        }
        if (byContent.size() < 2) {
            return byContent.values().stream().flatMap(List::stream).toList();
        }
        all(components, beside).stream()
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

    /** The cloths and the parts that are stated; the only cloth is then the body. */
    private static List<Component> all(List<Component> cloths, PartsBesideCloth.Decided beside) {
        boolean body = cloths.size() == 1
                && cloths.get(0).part().isEmpty()
                && !beside.stated().isEmpty();
        List<Component> all = new ArrayList<>(
                body ? List.of(cloths.get(0).as(Message.of("rules.part.body").inEnglish())) : cloths);
        all.addAll(beside.stated());
        return all;
    }

    /** The content of the cloth, with what must be said of parts that are left out. */
    private static List<FibreLine> excluding(
            RuleTable rules, List<FibreLine> lines, List<PartsBesideCloth.LeftOut> leftOut) {
        List<FibreLine> all = lines;
        for (PartsBesideCloth.LeftOut each : leftOut) {
            if (!each.phrase().isEmpty()) {
                all = all.stream()
                        .map(line -> line.text().contains(each.phrase())
                                ? line
                                : new FibreLine(
                                        line.kind(),
                                        line.text() + " " + each.phrase(),
                                        rules.rule(each.rule()),
                                        line.note()))
                        .toList();
            }
        }
        return all;
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
