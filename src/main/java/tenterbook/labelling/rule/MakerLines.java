package tenterbook.labelling.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.piece.Studio;
import tenterbook.words.Message;
import tenterbook.words.Worded;
import tenterbook.words.Written;

/** The maker's name and particulars as a market asks for them. */
final class MakerLines {
    /** A particular of the maker, by the name of its field. */
    enum Particular implements Worded {
        NAME,
        POSTAL_ADDRESS,
        ONLINE,
        PHONE,
        RN,
        CA_NUMBER,
        RESPONSIBLE;

        @Override
        public Message word() {
            return Message.of(
                    "rules.particular." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
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

    static List<FibreLine> lines(
            RuleTable rules, Article article, List<LabelRefusal> refusals, List<Question> questions) {
        RuleTable.MakerNeeds needs = rules.maker();
        Rule rule = rules.rule(needs.rule());
        Studio studio = article.studio();
        Optional<List<Particular>> way = needs.ways().stream()
                .filter(each -> each.stream().noneMatch(p -> p.of(studio).isEmpty()))
                .findFirst();
        if (way.isEmpty()) {
            missing(rules, studio, rule, refusals, questions);
        }
        boolean answered = needs.always().contains(Particular.RESPONSIBLE)
                && !studio.responsible().isEmpty();
        if (!needs.outside().isEmpty() && !within(rules, article) && !answered) {
            questions.add(rules.rule(needs.outside()).asked(""));
        }
        boolean registered = Stream.of(Particular.RN, Particular.CA_NUMBER)
                .anyMatch(number -> needs.ways().contains(List.of(number))
                        && !number.of(studio).isEmpty());
        if (!studio.name().isEmpty() && !registered && !rule.asks().isEmpty()) {
            questions.add(rule.asked(studio.name()));
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
            RuleTable rules, Studio studio, Rule rule, List<LabelRefusal> refusals, List<Question> questions) {
        Written ways = joined(
                "rules.particular.either",
                rules.maker().ways().stream()
                        .map(each -> joined("rules.particular.both", each))
                        .toList());
        if (rules.maker().refuse()) {
            refusals.add(new LabelRefusal(
                    studio.name().isEmpty()
                            ? Message.of("rules.maker.no-name")
                            : Message.of("rules.maker.not-recorded", "market", rules.name()),
                    rule,
                    Message.of("rules.maker.enter", "particulars", ways),
                    LabelRefusal.Mend.STUDIO));
        } else {
            questions.add(new Question(Message.of("rules.maker.with-the-piece", "particulars", ways), rule));
        }
    }

    private static Written joined(String key, List<? extends Written> particulars) {
        return particulars.stream()
                .map(Written.class::cast)
                .reduce((one, other) -> Message.of(key, "one", one, "other", other))
                .orElseThrow();
    }

    private static boolean within(RuleTable rules, Article article) {
        String place = article.dyedIn().toLowerCase(Locale.ROOT).strip();
        return rules.members().contains(place)
                || rules.members()
                        .contains(place.substring(place.lastIndexOf(',') + 1).strip());
    }
}
