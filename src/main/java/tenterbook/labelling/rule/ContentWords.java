package tenterbook.labelling.rule;

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
import tenterbook.measure.NumberWords;
import tenterbook.piece.Studio;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The fibre content of one component in one market's words. */
final class ContentWords {
    /** Sums nearer to 100 than this count as 100, since labels state whole or tenth percents. */
    private static final double SLACK = 0.005;

    /** @param name in English; empty where the market prints none */
    private record Share(FibreNames.Fibre fibre, String name, double percent, String purpose) {}

    /** What stands in a list of shares: a fibre, or 'other fibre' where {@code share} is null. */
    private record FibrePart(Share share, double percent, String english) {}

    private final RuleTable rules;
    private final Component component;
    private final Studio studio;
    private final List<LabelRefusal> refusals;
    private final List<Question> questions;
    private boolean refused;

    ContentWords(
            RuleTable rules,
            Component component,
            Studio studio,
            List<LabelRefusal> refusals,
            List<Question> questions) {
        this.rules = rules;
        this.component = component;
        this.studio = studio;
        this.refusals = refusals;
        this.questions = questions;
    }

    /** The required line, and below it one for each further language; empty where it was refused, with the reasons noted. */
    List<FibreLine> lines() {
        if (component.content().isEmpty()) {
            refuse(found("rules.content.not-recorded"), "missing", Message.of("rules.content.record-fibres"));
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
                        Message.of("rules.content.name-from-memory", "name", name.get(), "market", rules.name()),
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
        refused = true;
        refusals.add(new LabelRefusal(found, rules.rule(rule), fix, mend(rule)));
    }

    /** Names in other languages are entered with the studio, all else with the cloth. */
    private static LabelRefusal.Mend mend(String rule) {
        return rule.equals("language") ? LabelRefusal.Mend.STUDIO : LabelRefusal.Mend.CLOTH;
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
                        ? Message.of("rules.content.purpose", "percent", number(share.percent), "fibre", share.name)
                        : Message.of("rules.content.purpose-not-listed", "purpose", share.purpose, "fibre", share.name),
                rules.rule("small")));
        return false;
    }

    /** By falling percentage, unnamed fibres last. */
    private List<FibrePart> parts(List<Share> shares) {
        List<Share> falling = new ArrayList<>(shares);
        falling.sort(Comparator.comparingDouble(Share::percent).reversed());
        List<FibrePart> parts = new ArrayList<>();
        double other = 0;
        int others = 0;
        for (Share share : falling) {
            if (stated(share)) {
                parts.add(new FibrePart(share, share.percent, share.name));
            } else {
                other += share.percent;
                others++;
            }
        }
        if (others > 0) {
            parts.add(new FibrePart(null, other, others == 1 ? rules.otherOne() : rules.otherMany()));
        }
        if (others > 1 && rules.otherOne().equals(rules.otherMany())) {
            questions.add(new Question(
                    Message.of("rules.content.other-plural", "name", rules.otherOne(), "count", others),
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

    private List<FibreLine> languages(List<FibrePart> parts, Rule rule) {
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

    private FibreLine english(List<FibrePart> parts, Rule rule) {
        String text = parts.stream().map(p -> written(p.percent, p.english)).collect(Collectors.joining(" "));
        return new FibreLine(FibreLine.Kind.CONTENT, text, rule);
    }

    /** The line in another language, with the English where the market joins them; what is missing is refused or asked for. */
    private Optional<FibreLine> translated(List<FibrePart> parts, OtherNames names, Rule rule, boolean needed) {
        List<String> words = new ArrayList<>();
        List<String> missing = new ArrayList<>();
        Set<String> notes = new LinkedHashSet<>();
        boolean joined = rules.otherUse() == Language.Use.JOINED;
        for (FibrePart part : parts) {
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
        if (needed) {
            refuse(
                    Message.of(
                            "rules.content.other-language",
                            "language",
                            names.language().name(),
                            "fibres",
                            what),
                    "language",
                    Message.of("rules.content.enter-name"));
        } else {
            questions.add(new Question(
                    Message.of(
                            "rules.content.what-is",
                            "fibres",
                            what,
                            "language",
                            names.language().name()),
                    rules.rule("language")));
        }
        return Optional.empty();
    }

    private String written(double percent, String name) {
        return rules.percent().formatted(number(percent).inEnglish(), capital(name));
    }

    private String capital(String name) {
        return rules.capitals() ? Written.capital(name) : name;
    }

    private static Written number(double value) {
        return NumberWords.plain(BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP));
    }
}
