package tenterbook.label.rule;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tenterbook.material.FibreShare;
import tenterbook.piece.Studio;

/** The fibre content of one component in one market's words. */
final class ContentWords {
    /** Sums nearer to 100 than this are 100; a label states whole or tenth percents. */
    private static final double SLACK = 0.005;

    /** @param name in English; empty where the market prints none */
    private record Share(FibreNames.Fibre fibre, String name, double percent, String purpose) {}

    /** What stands in a list of shares: a fibre, or 'other fibre' where {@code share} is null. */
    private record Part(Share share, double percent, String english) {}

    private final RuleTable rules;
    private final Component component;
    private final Studio studio;
    private final List<Refusal> refusals;
    private final List<Question> questions;
    private boolean refused;

    ContentWords(
            RuleTable rules, Component component, Studio studio, List<Refusal> refusals, List<Question> questions) {
        this.rules = rules;
        this.component = component;
        this.studio = studio;
        this.refusals = refusals;
        this.questions = questions;
    }

    /** The required line, and below it one for each further language; empty where it was refused, with the reasons noted. */
    List<FibreLine> lines() {
        if (component.content().isEmpty()) {
            refuse(
                    "Fibre content not recorded for the cloth “%s”",
                    "missing", "Record its fibres and their percentages");
            return List.of();
        }
        List<Share> shares = named();
        checkPercents();
        if (refused) {
            return List.of();
        }
        List<Share> decoration = shares.stream().filter(this::decorative).toList();
        List<Share> ground =
                shares.stream().filter(s -> !decoration.contains(s)).toList();
        if (!decoration.isEmpty() && ground.size() == 1) {
            String text = written(100, ground.get(0).name) + " " + rules.decorationPhrase();
            return List.of(new FibreLine(FibreLine.Kind.CONTENT, text, rules.rule("decoration")));
        }
        return languages(parts(shares), contentRule(shares));
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
                        "The name “%s” for %s is from memory; was it checked in the rule's own list?"
                                .formatted(name.get(), rules.name()),
                        rules.rule("name")));
            }
            double percent = share.percent() == null ? 0 : share.percent();
            byName.merge(
                    english ? name.get() : fibre.get().fibre(),
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
        Optional<FibreNames.Fibre> known = FibreNames.entered(entry);
        if (known.isPresent() && known.get().fibre().equals(FibreNames.UNKNOWN)) {
            refuse(
                    "“" + written + "” may not stand on a label here, for the cloth “%s”",
                    "missing",
                    "Find out what it is: the supplier's word, a burn test, a laboratory");
            return;
        }
        Optional<String> root = FibreNames.all().stream()
                .flatMap(f -> f.entries().stream())
                .filter(name -> known.isEmpty() && entry.contains(name))
                .max(Comparator.comparingInt(String::length));
        if (FibreNames.abbreviated(entry)) {
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
        refusals.add(new Refusal(found.replace("%s", component.cloth()), rules.rule(rule), fix, mend(rule)));
    }

    /** Names in other languages stand with the studio, all else with the cloth. */
    private static Refusal.Mend mend(String rule) {
        return rule.equals("language") ? Refusal.Mend.STUDIO : Refusal.Mend.CLOTH;
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

    /** Falling by percentage, what is not named last. */
    private List<Part> parts(List<Share> shares) {
        List<Share> falling = new ArrayList<>(shares);
        falling.sort(Comparator.comparingDouble(Share::percent).reversed());
        List<Part> parts = new ArrayList<>();
        double other = 0;
        int others = 0;
        for (Share share : falling) {
            if (stated(share)) {
                parts.add(new Part(share, share.percent, share.name));
            } else {
                other += share.percent;
                others++;
            }
        }
        if (others > 0) {
            parts.add(new Part(null, other, others == 1 ? rules.otherOne() : rules.otherMany()));
        }
        if (others > 1 && rules.otherOne().equals(rules.otherMany())) {
            questions.add(new Question(
                    "Is “%s” right for %d fibres together? Its plural was not read, so the singular is printed"
                            .formatted(rules.otherOne(), others),
                    rules.rule("small")));
        }
        return parts;
    }

    private Rule contentRule(List<Share> shares) {
        boolean small = shares.stream().anyMatch(s -> s.percent < rules.otherBelow());
        boolean wool = shares.stream()
                .anyMatch(s -> rules.alwaysNamed().contains(s.fibre.fibre()) && s.percent < rules.otherBelow());
        boolean allNamed = shares.stream()
                .allMatch(s -> s.percent >= rules.otherBelow()
                        || rules.alwaysNamed().contains(s.fibre.fibre())
                        || rules.functional().contains(s.purpose.toLowerCase(Locale.ROOT)));
        return rules.rule(small && !allNamed ? "small" : wool ? "wool" : shares.size() == 1 ? "whole" : "order");
    }

    private List<FibreLine> languages(List<Part> parts, Rule rule) {
        List<FibreLine> lines = new ArrayList<>();
        switch (rules.otherUse()) {
            case NONE -> lines.add(english(parts, rule));
            case BESIDE -> {
                lines.add(english(parts, rule));
                for (Language language : rules.otherLanguages()) {
                    OtherNames names = new OtherNames(rules, language, studio);
                    if (names.begun()) {
                        translated(parts, names, rule, false).ifPresent(lines::add);
                    }
                }
            }
            case JOINED, INSTEAD ->
                translated(parts, new OtherNames(rules, rules.otherLanguages().get(0), studio), rule, true)
                        .ifPresent(lines::add);
        }
        return lines;
    }

    private FibreLine english(List<Part> parts, Rule rule) {
        String text = parts.stream().map(p -> written(p.percent, p.english)).collect(Collectors.joining(" "));
        return new FibreLine(FibreLine.Kind.CONTENT, text, rule);
    }

    /** The line in another language, with the English where the market joins them; what is missing is refused or asked for. */
    private Optional<FibreLine> translated(List<Part> parts, OtherNames names, Rule rule, boolean needed) {
        List<String> words = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        Set<String> notes = new LinkedHashSet<>();
        boolean joined = rules.otherUse() == Language.Use.JOINED;
        for (Part part : parts) {
            Optional<OtherNames.Name> name = part.share == null ? names.otherFibre() : names.of(part.share.fibre);
            if (name.isEmpty()) {
                missing.add(part.share == null ? OtherNames.OTHER_FIBRE : part.share.fibre.fibre());
                continue;
            }
            notes.add(name.get().by());
            String other = name.get().text();
            words.add(written(part.percent, joined ? part.english + "/" + capital(other) : other));
        }
        if (missing.isEmpty()) {
            return Optional.of(
                    new FibreLine(FibreLine.Kind.CONTENT, String.join(" ", words), rule, String.join("; ", notes)));
        }
        String what = String.join(", ", missing);
        String fix = "Enter it, and who says so, under names in other languages in the studio's particulars; "
                + "this program translates nothing";
        if (needed) {
            refuse(
                    "The name in %s of %s is not entered"
                            .formatted(names.language().name(), what),
                    "language",
                    fix);
        } else {
            questions.add(new Question(
                    "What is %s in %s? Other names in that language are entered, this one is not, so no line in it is printed"
                            .formatted(what, names.language().name()),
                    rules.rule("language")));
        }
        return Optional.empty();
    }

    private String written(double percent, String name) {
        return rules.percent().formatted(number(percent), capital(name));
    }

    private String capital(String name) {
        return rules.capitals() ? FibreStatement.capital(name) : name;
    }

    static String number(double value) {
        return BigDecimal.valueOf(value)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
