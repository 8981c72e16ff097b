package tenterbook.labelling.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tenterbook.words.Listing;
import tenterbook.words.Message;

/** What is open about where and to whom a piece is sold. */
final class SaleQuestions {
    /** Rules on what is made to one person's order. */
    private static final Set<String> TO_ORDER = Set.of("ownOrder", "bill");

    private static final String LANGUAGE = "language";

    private SaleQuestions() {}

    /** Whether the record answers what a rule would ask. */
    static boolean answered(Article article, Rule rule) {
        return TO_ORDER.contains(rule.id())
                && Boolean.FALSE.equals(article.facts().madeToOrder());
    }

    /** The question of a rule that asks of every piece; that for the country of sale only where none is recorded. */
    static Optional<Question> always(Article article, Rule rule) {
        if (!rule.id().equals(LANGUAGE)) {
            return Optional.of(rule.asked(""));
        }
        return article.facts().soldIn().isEmpty()
                ? Optional.of(rule.asked("").mendedIn(LabelRefusal.Mend.STUDIO))
                : Optional.empty();
    }

    /** @param asked so far */
    static List<Question> of(RuleTable rules, Article article, List<Question> asked) {
        List<Question> questions = new ArrayList<>();
        if (Boolean.TRUE.equals(article.facts().madeToOrder())
                && asked.stream()
                        .noneMatch(question -> TO_ORDER.contains(question.rule().id()))) {
            TO_ORDER.stream()
                    .filter(rules.rules()::containsKey)
                    .map(id -> rules.rule(id)
                            .asked(Message.of("rules.sale.made-to-order").inEnglish()))
                    .forEach(questions::add);
        }
        String country = article.facts().soldIn();
        if (!country.isEmpty()) {
            if (RuleTable.sells(rules.market(), country)) {
                language(rules, article, country, questions);
            } else if (!rules.members().isEmpty() || !rules.home().isEmpty()) {
                questions.add(new Question(
                        Message.of("rules.sale.other-market", "country", country, "market", rules.name()),
                        rules.rule("name"),
                        LabelRefusal.Mend.PIECE));
            }
        }
        return questions;
    }

    private static void language(RuleTable rules, Article article, String country, List<Question> questions) {
        List<String> official = rules.languagesOf().getOrDefault(RuleTable.place(country), List.of());
        List<Language> lacking = rules.otherLanguages().stream()
                .filter(language -> official.contains(language.tag()))
                .filter(language -> !new OtherNames(rules, language, article.studio()).begun())
                .toList();
        if (!lacking.isEmpty()) {
            questions.add(new Question(
                    Message.of(
                            "rules.sale.language",
                            "country",
                            country,
                            "languages",
                            Listing.and(lacking.stream().map(Language::name).toList()),
                            "count",
                            lacking.size()),
                    rules.rule(LANGUAGE),
                    LabelRefusal.Mend.STUDIO));
        }
    }
}
