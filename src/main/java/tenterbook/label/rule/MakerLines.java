package tenterbook.label.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.piece.Studio;

/** The maker's name and particulars as a market asks for them. */
final class MakerLines {
    /** A particular of the maker, by the name of its field. */
    enum Particular {
        NAME("the studio's name"),
        POSTAL_ADDRESS("its postal address"),
        ONLINE("an e-mail or web address"),
        PHONE("a telephone number"),
        RN("a registered number (RN)"),
        CA_NUMBER("a Canadian identification number (CA)"),
        RESPONSIBLE("the responsible person in the European Union");

        private final String word;

        Particular(String word) {
            this.word = word;
        }

        String of(Studio studio) {
            return switch (this) {
                case NAME -> studio.name();
                case POSTAL_ADDRESS -> String.join(", ", studio.postalAddress().split("\\s*[\\r\\n]+\\s*"));
                case ONLINE -> studio.online();
                case PHONE -> studio.phone();
                case RN -> studio.rn().isEmpty() ? "" : "RN " + studio.rn();
                case CA_NUMBER -> studio.caNumber().isEmpty() ? "" : "CA " + studio.caNumber();
                case RESPONSIBLE -> String.join(", ", studio.responsible().split("\\s*[\\r\\n]+\\s*"));
            };
        }
    }

    private MakerLines() {}

    static List<FibreLine> lines(RuleTable rules, Article article, List<Refusal> refusals, List<Question> questions) {
        RuleTable.MakerNeeds needs = rules.maker();
        Rule rule = rules.rule(needs.rule());
        Studio studio = article.studio();
        Optional<List<Particular>> way = needs.ways().stream()
                .filter(each -> each.stream().noneMatch(p -> p.of(studio).isEmpty()))
                .findFirst();
        if (way.isEmpty()) {
            missing(rules, studio, rule, refusals, questions);
        }
        if (!rules.members().isEmpty()
                && !within(rules, article)
                && studio.responsible().isEmpty()) {
            questions.add(new Question(
                    "Who is the responsible person in the European Union? The piece is not recorded as dyed in a member state, and none is named in the studio's particulars",
                    rule));
        }
        List<FibreLine> lines = new ArrayList<>();
        if (!studio.name().isEmpty()) {
            lines.add(new FibreLine(FibreLine.Kind.MAKER, studio.name(), rule));
        }
        List<Particular> printed = new ArrayList<>(way.orElse(List.of()));
        needs.always().stream().filter(p -> !printed.contains(p)).forEach(printed::add);
        printed.remove(Particular.NAME);
        printed.stream()
                .map(p -> p.of(studio))
                .filter(text -> !text.isEmpty())
                .map(text -> new FibreLine(FibreLine.Kind.PARTICULARS, text, rule))
                .forEach(lines::add);
        return lines;
    }

    private static void missing(
            RuleTable rules, Studio studio, Rule rule, List<Refusal> refusals, List<Question> questions) {
        String ways = rules.maker().ways().stream()
                .map(each -> each.stream().map(p -> p.word).collect(Collectors.joining(" and ")))
                .collect(Collectors.joining(", or "));
        if (rules.maker().refuse()) {
            refusals.add(new Refusal(
                    studio.name().isEmpty()
                            ? "The studio has no name"
                            : "The maker's particulars for %s are not recorded".formatted(rules.name()),
                    rule,
                    "Enter " + ways + " in the studio's particulars",
                    Refusal.Mend.STUDIO));
        } else {
            questions.add(new Question(
                    "Is %s with the piece or its packing? It is not in the studio's particulars".formatted(ways),
                    rule));
        }
    }

    private static boolean within(RuleTable rules, Article article) {
        String place = article.dyedIn().toLowerCase(Locale.ROOT).strip();
        return rules.members().contains(place)
                || rules.members()
                        .contains(place.substring(place.lastIndexOf(',') + 1).strip());
    }
}
