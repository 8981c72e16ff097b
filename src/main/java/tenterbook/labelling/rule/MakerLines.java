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
        RESPONSIBLE,
        /** Of what is made outside the market; printed for that alone. */
        IMPORTER;

        @Override
        public Message word() {
            return Message.of(
                    "rules.particular." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }

        String of(Studio studio) {
            return switch (this) {
                case NAME -> studio.name();
                case POSTAL_ADDRESS -> oneLine(studio.postalAddress());
                case ONLINE -> studio.online();
                case PHONE -> studio.phone();
                case RN -> studio.rn().isEmpty() ? "" : "RN " + studio.rn();
                case CA_NUMBER -> studio.caNumber().isEmpty() ? "" : "CA " + studio.caNumber();
                case RESPONSIBLE -> oneLine(studio.responsible());
                case IMPORTER -> oneLine(studio.selling().importer());
            };
        }

        private static String oneLine(String text) {
            return String.join(", ", text.split("\\s*[\\r\\n]+\\s*"));
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
        boolean outside = !needs.outside().isEmpty() && !within(rules, article);
        boolean answered = Stream.of(Particular.RESPONSIBLE, Particular.IMPORTER)
                .anyMatch(p -> needs.always().contains(p) && !p.of(studio).isEmpty());
        if (outside && !answered) {
            questions.add(rules.rule(needs.outside()).asked("").mendedIn(LabelRefusal.Mend.STUDIO));
        }
        boolean registered = Stream.of(Particular.RN, Particular.CA_NUMBER)
                .anyMatch(number -> needs.ways().contains(List.of(number))
                        && !number.of(studio).isEmpty());
        String registeredName = studio.selling().registeredName();
        if (!studio.name().isEmpty() && !registered && !rule.asks().isEmpty() && registeredName.isEmpty()) {
            questions.add(rule.asked(studio.name()).mendedIn(LabelRefusal.Mend.STUDIO));
        }
        List<FibreLine> lines = new ArrayList<>();
        if (!studio.name().isEmpty()) {
            lines.add(new FibreLine(FibreLine.Kind.MAKER, studio.name(), rule));
        }
        if (!rule.asks().isEmpty()
                && !registered
                && !registeredName.isEmpty()
                && !registeredName.equals(studio.name())) {
            lines.add(new FibreLine(FibreLine.Kind.PARTICULARS, registeredName, rule));
        }
        List<Particular> printed = new ArrayList<>(way.orElse(List.of()));
        needs.always().stream().filter(p -> !printed.contains(p)).forEach(printed::add);
        printed.remove(Particular.NAME);
        if (!outside) {
            printed.remove(Particular.IMPORTER);
        }
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
            questions.add(new Question(
                    Message.of("rules.maker.with-the-piece", "particulars", ways), rule, LabelRefusal.Mend.STUDIO));
        }
    }

    private static Written joined(String key, List<? extends Written> particulars) {
        return particulars.stream()
                .map(Written.class::cast)
                .reduce((one, other) -> Message.of(key, "one", one, "other", other))
                .orElseThrow();
    }

    private static boolean within(RuleTable rules, Article article) {
        return rules.members().contains(RuleTable.place(article.dyedIn()));
    }
}
