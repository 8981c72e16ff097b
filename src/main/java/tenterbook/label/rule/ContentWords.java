package tenterbook.label.rule;

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

/** The fibre content of one component in one market's words. */
final class ContentWords {
    /** Sums nearer to 100 than this are 100; a label states whole or tenth percents. */
    private static final double SLACK = 0.005;

    private record Share(FibreNames.Fibre fibre, String name, double percent, String purpose) {}

    private final RuleTable rules;
    private final Component component;
    private final List<Refusal> refusals;
    private final List<Question> questions;
    private boolean refused;

    ContentWords(RuleTable rules, Component component, List<Refusal> refusals, List<Question> questions) {
        this.rules = rules;
        this.component = component;
        this.refusals = refusals;
        this.questions = questions;
    }

    /** Empty where it was refused; the reasons are then in the list of refusals. */
    Optional<FibreLine> line() {
        if (component.content().isEmpty()) {
            refuse(
                    "Fibre content not recorded for the cloth “%s”",
                    "missing", "Record its fibres and their percentages");
            return Optional.empty();
        }
        List<Share> shares = named();
        checkPercents();
        if (refused) {
            return Optional.empty();
        }
        List<Share> decoration = shares.stream().filter(this::decorative).toList();
        List<Share> ground =
                shares.stream().filter(s -> !decoration.contains(s)).toList();
        if (!decoration.isEmpty() && ground.size() == 1) {
            String text = written(100, ground.get(0).name) + " " + rules.decorationPhrase();
            return Optional.of(new FibreLine(FibreLine.Kind.CONTENT, text, rules.rule("decoration")));
        }
        return Optional.of(ordered(shares));
    }

    private List<Share> named() {
        Map<String, Share> byName = new LinkedHashMap<>();
        for (FibreShare share : component.content()) {
            String entry = share.fibre().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
            Optional<FibreNames.Fibre> fibre = FibreNames.entered(entry);
            Optional<String> name = fibre.flatMap(f -> f.printed(rules.market(), entry));
            if (name.isEmpty()) {
                refuseName(share.fibre(), entry);
                continue;
            }
            if (!fibre.get().read(rules.market())) {
                questions.add(new Question(
                        "The name “%s” for %s is from memory; was it checked in the rule's own list?"
                                .formatted(name.get(), rules.name()),
                        rules.rule("name")));
            }
            double percent = share.percent() == null ? 0 : share.percent();
            byName.merge(
                    name.get(),
                    new Share(fibre.get(), name.get(), percent, share.purpose()),
                    (a, b) -> new Share(
                            a.fibre, a.name, a.percent + b.percent, a.purpose.isEmpty() ? b.purpose : a.purpose));
        }
        return new ArrayList<>(byName.values());
    }

    private void refuseName(String written, String entry) {
        if (entry.isEmpty()) {
            refuse("A fibre of “%s” has no name", "missing", "Record which fibre it is");
            return;
        }
        for (RuleTable.Misnomer misnomer : rules.misnomers()) {
            if (entry.matches(".*\\b" + misnomer.word() + "\\b.*")) {
                refuse("“" + written + "” is not a fibre's name, in the cloth “%s”", "misuse", misnomer.fix());
                return;
            }
        }
        Optional<String> root = FibreNames.all().stream()
                .flatMap(f -> f.entries().stream())
                .filter(name -> entry.contains(name) && !entry.equals(name))
                .max(Comparator.comparingInt(String::length));
        if (entry.contains(".") || entry.contains("*") || entry.equals("\"")) {
            refuse(
                    "“" + written + "” is an abbreviation, in the cloth “%s”",
                    "abbreviation",
                    "Write the fibre's name in full, as in 'cotton'");
        } else if (root.isPresent()) {
            refuse(
                    "“" + written
                            + "” uses a fibre's name for something else or with more than its name, in the cloth “%s”",
                    "misuse",
                    "Record '%s' if it is wholly that, else the fibre it truly is".formatted(root.get()));
        } else {
            refuse(
                    "“" + written + "” is no fibre name that may be printed, in the cloth “%s”",
                    "name",
                    "Record the generic name, as in 'silk', 'cotton', 'linen' or '%s'"
                            .formatted(rules.market() == Market.US ? "rayon" : "viscose"));
        }
    }

    private void checkPercents() {
        List<FibreShare> without =
                component.content().stream().filter(s -> s.percent() == null).toList();
        if (!without.isEmpty()) {
            String names = without.stream().map(FibreShare::fibre).collect(Collectors.joining(", "));
            refuse(
                    "How much of “%s” is " + names + " is not recorded",
                    "missing",
                    component.content().size() == 1
                            ? "Record 100 if it is wholly " + names
                            : "Record each fibre's percentage by weight");
            return;
        }
        double sum =
                component.content().stream().mapToDouble(FibreShare::percent).sum();
        if (Math.abs(sum - 100) > SLACK) {
            refuse(
                    "The fibres of “%s” come to " + number(sum) + " percent",
                    "sum",
                    sum < 100
                            ? "Name the missing " + number(100 - sum) + " percent, or correct a share"
                            : "Take away " + number(sum - 100) + " percent where it was counted twice");
        }
    }

    private void refuse(String found, String rule, String fix) {
        refused = true;
        refusals.add(new Refusal(found.replace("%s", component.cloth()), rules.rule(rule), fix));
    }

    private boolean decorative(Share share) {
        return share.percent <= rules.decorativeAtMost()
                && rules.decorative().contains(share.purpose.toLowerCase(Locale.ROOT));
    }

    private boolean stated(Share share) {
        if (share.percent >= rules.otherBelow() || rules.alwaysNamed().contains(share.fibre.fibre())) {
            return true;
        }
        if (rules.functional().contains(share.purpose.toLowerCase(Locale.ROOT))) {
            return true;
        }
        questions.add(new Question(
                share.purpose.isEmpty()
                        ? "Is the %s percent %s there for a purpose, such as stretch? If so record it, and the fibre is named"
                                .formatted(number(share.percent), share.name)
                        : "Is “%s” a definite functional purpose of the %s? It is not on the list, so the fibre is not named"
                                .formatted(share.purpose, share.name),
                rules.rule("small")));
        return false;
    }

    private FibreLine ordered(List<Share> shares) {
        List<Share> falling = new ArrayList<>(shares);
        falling.sort(Comparator.comparingDouble(Share::percent).reversed());
        List<String> words = new ArrayList<>();
        double other = 0;
        int others = 0;
        for (Share share : falling) {
            if (stated(share)) {
                words.add(written(share.percent, share.name));
            } else {
                other += share.percent;
                others++;
            }
        }
        if (others > 0) {
            words.add(written(other, others == 1 ? rules.otherOne() : rules.otherMany()));
        }
        boolean wool = shares.stream()
                .anyMatch(s -> rules.alwaysNamed().contains(s.fibre.fibre()) && s.percent < rules.otherBelow());
        String rule = others > 0 ? "small" : wool ? "wool" : shares.size() == 1 ? "whole" : "order";
        return new FibreLine(FibreLine.Kind.CONTENT, String.join(" ", words), rules.rule(rule));
    }

    private String written(double percent, String name) {
        String printed = rules.capitals() ? FibreStatement.capital(name) : name;
        return rules.percent().formatted(number(percent), printed);
    }

    static String number(double value) {
        return BigDecimal.valueOf(value)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
