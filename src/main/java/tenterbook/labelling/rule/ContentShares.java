package tenterbook.labelling.rule;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.material.FibreShare;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The fibres of one component by their names in one market, and whether their shares add up. */
final class ContentShares {
    /** Sums nearer to 100 than this count as 100, since labels state whole or tenth percents. */
    private static final double SLACK = 0.005;

    /** @param name in English; empty where the market prints none */
    record Share(FibreNames.Fibre fibre, String name, double percent, String purpose) {}

    /** @param refusals reasons against a content line; where there are any, {@code shares} is incomplete */
    record Named(List<Share> shares, List<LabelRefusal> refusals, List<Question> questions) {}

    private final RuleTable rules;
    private final Component component;
    private final List<LabelRefusal> refusals = new ArrayList<>();
    private final List<Question> questions = new ArrayList<>();

    private ContentShares(RuleTable rules, Component component) {
        this.rules = rules;
        this.component = component;
    }

    static Named of(RuleTable rules, Component component) {
        ContentShares content = new ContentShares(rules, component);
        List<Share> shares = List.of();
        if (component.content().isEmpty()) {
            content.refuse(
                    content.found("rules.content.not-recorded"), "missing", Message.of("rules.content.record-fibres"));
        } else {
            shares = content.named();
            content.checkPercents();
        }
        return new Named(shares, content.refusals, content.questions);
    }

    private List<Share> named() {
        Map<String, Share> byName = new LinkedHashMap<>();
        for (FibreShare share : component.content()) {
            String entry = share.fibre().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
            Optional<FibreNames.Fibre> fibre = FibreNames.entered(entry);
            boolean english = rules.otherUse() != Language.Use.INSTEAD;
            Optional<String> name = english
                    ? fibre.flatMap(f -> f.printed(rules.market(), entry))
                    : fibre.filter(f -> !f.fibre().equals(FibreNames.UNKNOWN)).map(f -> "");
            if (fibre.isEmpty() || name.isEmpty()) {
                refuseName(share.fibre(), entry);
                continue;
            }
            if (english && !fibre.get().read(rules.market())) {
                questions.add(new Question(
                        Message.of("rules.content.name-from-memory", "name", name.get(), "market", rules.name()),
                        rules.rule("name")));
            }
            double percent = share.percent() == null ? 0 : share.percent();
            if (fibre.get().fibre().equals(FibreNames.OTHER) && rules.rules().containsKey("other")) {
                other(share, percent);
            }
            byName.merge(
                    english ? name.get() : fibre.get().fibre(),
                    new Share(fibre.get(), name.get(), percent, share.purpose()),
                    (a, b) -> new Share(
                            a.fibre, a.name, a.percent + b.percent, a.purpose.isEmpty() ? b.purpose : a.purpose));
        }
        return new ArrayList<>(byName.values());
    }

    /** 'Other fibres' as the maker wrote it: on conditions that no record holds, so they are asked about; beyond them refused. */
    private void other(FibreShare share, double percent) {
        Rule rule = rules.rule("other");
        boolean several = share.fibre().toLowerCase(Locale.ROOT).endsWith("s");
        Written percentage = number(percent);
        if (share.purpose().toLowerCase(Locale.ROOT).contains("annex i")) {
            questions.add(rules.rule("otherUnlisted").asked(percentage.inEnglish()));
        } else if (percent > rule.figure(several ? 1 : 0)) {
            refuse(
                    Message.of("rules.content.too-much-other", "percent", percentage, "cloth", component.cloth()),
                    "other",
                    Message.of("rules.content.name-the-others"));
        } else {
            questions.add(rule.asked(percentage.inEnglish()));
        }
    }

    private void refuseName(String written, String entry) {
        if (entry.isEmpty()) {
            refuse(found("rules.content.no-name"), "missing", Message.of("rules.content.record-which"));
            return;
        }
        for (RuleTable.Misnomer misnomer : rules.misnomers()) {
            if (entry.matches(".*\\b" + misnomer.word() + "\\b.*")) {
                refuse(found("rules.content.misnomer", written), "misuse", new TableText(misnomer.fix()));
                return;
            }
        }
        Optional<FibreNames.Fibre> known = FibreNames.entered(entry);
        if (known.isPresent() && known.get().fibre().equals(FibreNames.UNKNOWN)) {
            refuse(found("rules.content.unknown", written), "missing", Message.of("rules.content.find-out"));
            return;
        }
        Optional<String> root = FibreNames.all().stream()
                .flatMap(f -> f.entries().stream())
                .filter(name -> known.isEmpty() && entry.contains(name))
                .max(Comparator.comparingInt(String::length));
        if (FibreNames.abbreviated(entry)) {
            refuse(found("rules.content.abbreviation", written), "abbreviation", Message.of("rules.content.in-full"));
        } else if (root.isPresent()) {
            refuse(
                    found("rules.content.more-than-a-name", written),
                    "misuse",
                    Message.of("rules.content.wholly", "fibre", root.get()));
        } else {
            refuse(
                    found("rules.content.no-fibre-name", written),
                    "name",
                    Message.of("rules.content.generic", "example", rules.market() == Market.US ? "rayon" : "viscose"));
        }
    }

    private void checkPercents() {
        List<FibreShare> without =
                component.content().stream().filter(s -> s.percent() == null).toList();
        if (!without.isEmpty()) {
            String names = without.stream().map(FibreShare::fibre).collect(Collectors.joining(", "));
            refuse(
                    Message.of("rules.content.no-percent", "cloth", component.cloth(), "fibres", names),
                    "missing",
                    component.content().size() == 1
                            ? Message.of("rules.content.record-hundred", "fibre", names)
                            : Message.of("rules.content.record-percents"));
            return;
        }
        double sum =
                component.content().stream().mapToDouble(FibreShare::percent).sum();
        if (Math.abs(sum - 100) > SLACK) {
            refuse(
                    Message.of("rules.content.sum", "cloth", component.cloth(), "sum", number(sum)),
                    "sum",
                    sum < 100
                            ? Message.of("rules.content.sum-too-small", "percent", number(100 - sum))
                            : Message.of("rules.content.sum-too-large", "percent", number(sum - 100)));
        }
    }

    private Message found(String key) {
        return Message.of(key, "cloth", component.cloth());
    }

    private Message found(String key, String written) {
        return Message.of(key, "written", written, "cloth", component.cloth());
    }

    private void refuse(Written found, String rule, Written fix) {
        refusals.add(new LabelRefusal(found, rules.rule(rule), fix, LabelRefusal.Mend.CLOTH));
    }

    static Written number(double value) {
        return NumberWords.plain(BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP));
    }
}
