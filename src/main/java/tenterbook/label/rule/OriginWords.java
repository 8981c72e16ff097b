package tenterbook.label.rule;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Where the cloth was woven and the piece dyed, in one statement. */
final class OriginWords {
    /** When a market's label states origin. */
    enum When {
        /** Always; what is not recorded is asked for. */
        REQUIRED,
        /** As a fact, where recorded. */
        FACT,
        /** Only where the piece is said to be imported; then it must. */
        IF_SAID_IMPORTED
    }

    private OriginWords() {}

    static List<FibreLine> lines(RuleTable rules, Article article, List<Refusal> refusals, List<Question> questions) {
        if (rules.originWhen() == When.IF_SAID_IMPORTED) {
            if (!article.saidToBeImported()) {
                return List.of();
            }
            if (article.dyedIn().isEmpty()) {
                refusals.add(new Refusal(
                        "The label's words say that it is imported, and the country is not recorded",
                        rules.rule("origin"),
                        "Record where it was dyed, or take the word off the label",
                        Refusal.Mend.STUDIO));
                return List.of();
            }
        }
        return stated(rules, article.components(), article.dyedIn(), questions);
    }

    private static List<FibreLine> stated(
            RuleTable rules, List<Component> components, String dyedIn, List<Question> questions) {
        Rule rule = rules.rule("origin");
        List<String> woven = components.stream()
                .map(Component::wovenIn)
                .filter(w -> !w.isEmpty())
                .distinct()
                .toList();
        boolean allWoven = !components.isEmpty()
                && components.stream().noneMatch(c -> c.wovenIn().isEmpty());
        if (!allWoven) {
            questions.add(new Question("Where was the cloth woven? It is not recorded", rule));
        }
        if (dyedIn.isBlank()) {
            questions.add(new Question("In which country was it dyed? It is not recorded", rule));
        }
        boolean dyedHome = home(rules, dyedIn);
        if (dyedHome && allWoven) {
            boolean wholly = woven.stream().allMatch(w -> home(rules, w));
            String text = wholly ? rules.homeWhole() : rules.homeImported();
            return List.of(new FibreLine(FibreLine.Kind.ORIGIN, ended(text), rule));
        }
        if (!rules.home().isEmpty() && !dyedHome && !dyedIn.isBlank()) {
            questions.add(new Question(
                    "Which country counts as the country of origin at the border? That turns on the customs rules, which are not in this program; the line states only where it was woven and dyed",
                    rule));
        }
        String text = "";
        if (!dyedIn.isBlank()) {
            text = "Dyed in %s.".formatted(dyedHome ? rules.homeName() : dyedIn).replace("..", ".");
        }
        if (!woven.isEmpty()) {
            String places = woven.stream()
                    .map(w -> home(rules, w) ? rules.homeName() : w)
                    .distinct()
                    .collect(Collectors.joining(" and in "));
            String cloth = allWoven ? "Cloth" : "Part of the cloth";
            text = (text + " %s woven in %s.".formatted(cloth, places).replace("..", ".")).strip();
        }
        return text.isEmpty() ? List.of() : List.of(new FibreLine(FibreLine.Kind.ORIGIN, text, rule));
    }

    private static boolean home(RuleTable rules, String place) {
        String plain = place.toLowerCase(Locale.ROOT).strip();
        String last = plain.substring(plain.lastIndexOf(',') + 1).strip();
        return rules.home().contains(plain) || rules.home().contains(last);
    }

    private static String ended(String text) {
        return text.endsWith(".") ? text : text + ".";
    }
}
