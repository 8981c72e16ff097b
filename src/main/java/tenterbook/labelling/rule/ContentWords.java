package tenterbook.labelling.rule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tenterbook.labelling.rule.ContentShares.Share;
import tenterbook.piece.Studio;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The fibre content of one component in one market's words. */
final class ContentWords {
    /** An entry of the list of shares: a fibre, or 'other fibre' where {@code share} is null. */
    private record FibrePart(Share share, double percent, String english) {}

    private final RuleTable rules;
    private final Component component;
    private final Studio studio;
    private final List<LabelRefusal> refusals;
    private final List<Question> questions;

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
        if (component.content().size() == 1) {
            String term = Rule.plain(component.content().get(0).fibre());
            if (rules.hardToState().contains(term)) {
                Rule rule = rules.rule("hardToState");
                questions.add(rule.asked(""));
                return List.of(new FibreLine(FibreLine.Kind.CONTENT, term, rule));
            }
        }
        ContentShares.Named named = ContentShares.of(rules, component);
        refusals.addAll(named.refusals());
        questions.addAll(named.questions());
        if (!named.refusals().isEmpty()) {
            return List.of();
        }
        List<Share> shares = named.shares();
        List<Share> decoration = shares.stream().filter(this::decorative).toList();
        List<Share> ground =
                shares.stream().filter(s -> !decoration.contains(s)).toList();
        if (!decoration.isEmpty() && ground.size() == 1) {
            String text = written(100, ground.get(0).name()) + " " + rules.decorationPhrase();
            return List.of(new FibreLine(FibreLine.Kind.CONTENT, text, rules.rule("decoration")));
        }
        return languages(parts(shares), contentRule(shares));
    }

    private boolean decorative(Share share) {
        return share.percent() <= rules.decorativeAtMost()
                && rules.decorative().contains(share.purpose().toLowerCase(Locale.ROOT));
    }

    private boolean stated(Share share) {
        if (rules.alwaysNamed().contains(share.fibre().fibre())
                || rules.functional().contains(share.purpose().toLowerCase(Locale.ROOT))) {
            return true;
        }
        if (share.percent() >= rules.otherBelow()) {
            Rule exactly = rules.rules().get("exactly");
            if (share.percent() == rules.otherBelow()
                    && exactly != null
                    && exactly.when().isEmpty()) {
                questions.add(exactly.asked(share.name()));
            }
            return true;
        }
        questions.add(new Question(
                share.purpose().isEmpty()
                        ? Message.of(
                                "rules.content.purpose",
                                "percent",
                                ContentShares.number(share.percent()),
                                "fibre",
                                share.name())
                        : Message.of(
                                "rules.content.purpose-not-listed", "purpose", share.purpose(), "fibre", share.name()),
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
                parts.add(new FibrePart(share, share.percent(), share.name()));
            } else {
                other += share.percent();
                others++;
            }
        }
        if (others > 0) {
            parts.add(new FibrePart(null, other, others == 1 ? rules.otherOne() : rules.otherMany()));
        }
        return parts;
    }

    private Rule contentRule(List<Share> shares) {
        boolean small = shares.stream().anyMatch(s -> s.percent() < rules.otherBelow());
        boolean wool = shares.stream()
                .anyMatch(s -> rules.alwaysNamed().contains(s.fibre().fibre()) && s.percent() < rules.otherBelow());
        boolean allNamed = shares.stream()
                .allMatch(s -> s.percent() >= rules.otherBelow()
                        || rules.alwaysNamed().contains(s.fibre().fibre())
                        || rules.functional().contains(s.purpose().toLowerCase(Locale.ROOT)));
        if (small && !allNamed) {
            return rules.rule("small");
        }
        if (wool) {
            return rules.rule("wool");
        }
        return rules.rule(shares.size() == 1 ? "whole" : "order");
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
            Optional<OtherNames.Name> name = part.share == null
                    ? names.otherFibre(part.english.equals(rules.otherMany()))
                    : names.of(part.share.fibre());
            if (name.isEmpty()) {
                missing.add(
                        part.share == null
                                ? OtherNames.OTHER_FIBRE
                                : part.share.fibre().fibre());
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
            refusals.add(new LabelRefusal(
                    Message.of(
                            "rules.content.other-language",
                            "language",
                            names.language().name(),
                            "fibres",
                            what),
                    rules.rule("language"),
                    Message.of("rules.content.enter-name"),
                    LabelRefusal.Mend.STUDIO));
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
        return rules.percent().formatted(ContentShares.number(percent).inEnglish(), capital(name));
    }

    private String capital(String name) {
        return rules.capitals() ? Written.capital(name) : name;
    }
}
