package tenterbook.labelling.rule;

import java.util.List;
import java.util.Locale;
import tenterbook.words.Message;

/** Where the cloth was woven and the piece dyed, in one statement. */
final class OriginWords {
    /** When a market's label states origin. */
    enum When {
        /** Always; what is not recorded is asked for. */
        REQUIRED,
        /** As a fact, where recorded. */
        FACT,
        /** Only where the piece is stated to be imported; then required. */
        IF_SAID_IMPORTED
    }

    private OriginWords() {}

    static List<FibreLine> lines(
            RuleTable rules, Article article, List<LabelRefusal> refusals, List<Question> questions) {
        if (rules.originWhen() == When.IF_SAID_IMPORTED) {
            if (!article.saidToBeImported()) {
                return List.of();
            }
            if (article.dyedIn().isEmpty()) {
                refusals.add(new LabelRefusal(
                        Message.of("rules.origin.imported"),
                        rules.rule("origin"),
                        Message.of("rules.origin.record-country"),
                        LabelRefusal.Mend.STUDIO));
                return List.of();
            }
        }
        if (rules.originWhen() == When.REQUIRED && withheld(rules, article, refusals)) {
            return List.of();
        }
        return stated(rules, article.components(), article.dyedIn(), questions);
    }

    /**
     * Whether the basis of the country of origin is missing; for a piece dyed in the market's own country that is where the
     * cloth was woven.
     */
    private static boolean withheld(RuleTable rules, Article article, List<LabelRefusal> refusals) {
        if (article.dyedIn().isEmpty()) {
            refusals.add(new LabelRefusal(
                    Message.of("rules.origin.country-missing"),
                    rules.rule("origin"),
                    Message.of("rules.origin.record-dyed-in"),
                    LabelRefusal.Mend.STUDIO));
            return true;
        }
        boolean wovenUnknown =
                article.components().stream().anyMatch(c -> c.wovenIn().isEmpty());
        if (home(rules, article.dyedIn()) && wovenUnknown) {
            refusals.add(new LabelRefusal(
                    Message.of("rules.origin.woven-missing"),
                    rules.rule("origin"),
                    Message.of("rules.origin.record-woven-in"),
                    LabelRefusal.Mend.CLOTH));
            return true;
        }
        return false;
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
            questions.add(new Question(Message.of("rules.origin.where-woven"), rule));
        }
        if (dyedIn.isBlank()) {
            questions.add(new Question(Message.of("rules.origin.where-dyed"), rule));
        }
        boolean dyedHome = home(rules, dyedIn);
        if (dyedHome && allWoven) {
            boolean wholly = woven.stream().allMatch(w -> home(rules, w));
            String text = wholly ? rules.homeWhole() : rules.homeImported();
            return List.of(new FibreLine(FibreLine.Kind.ORIGIN, ended(text), rule));
        }
        if (!rules.home().isEmpty() && !dyedHome && !dyedIn.isBlank()) {
            questions.add(new Question(Message.of("rules.origin.at-the-border"), rule));
        }
        String text = "";
        if (!dyedIn.isBlank()) {
            text = Message.of("rules.origin.dyed", "country", dyedHome ? rules.homeName() : dyedIn)
                    .inEnglish()
                    .replace("..", ".");
        }
        if (!woven.isEmpty()) {
            String places = woven.stream()
                    .map(w -> home(rules, w) ? rules.homeName() : w)
                    .distinct()
                    .reduce((one, other) -> Message.of("rules.origin.and-in", "one", one, "other", other)
                            .inEnglish())
                    .orElseThrow();
            String cloth = Message.of(
                            allWoven ? "rules.origin.woven" : "rules.origin.partly-woven", "countries", places)
                    .inEnglish();
            text = (text + " " + cloth.replace("..", ".")).strip();
        }
        return text.isEmpty() ? List.of() : List.of(new FibreLine(FibreLine.Kind.ORIGIN, text, rule));
    }

    static boolean home(RuleTable rules, String place) {
        return home(rules.home(), place);
    }

    /** @param names of the market's own country, lower case */
    static boolean home(List<String> names, String place) {
        String plain = place.toLowerCase(Locale.ROOT).strip();
        String last = plain.substring(plain.lastIndexOf(',') + 1).strip();
        return names.contains(plain) || names.contains(last);
    }

    private static String ended(String text) {
        return text.endsWith(".") ? text : text + ".";
    }
}
