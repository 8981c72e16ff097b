package tenterbook.labelling.rule;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.material.FibreShare;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.piece.label.PieceComponent;
import tenterbook.words.Message;

/**
 * The parts of a piece besides its cloth: which of them a market's statement names, and what it says of those left out.
 *
 * <p>A share that is known settles it. One that is not, or only 'about', does not: the maker is asked, and until then the part is
 * stated where its fibres are recorded, since to state more than is needed misleads nobody. So is a part whose fibre the words on
 * the label name: nothing may be claimed of what is left out (16 CFR 303.12(a), 15 USC 68b(d)).
 */
final class PartsBesideCloth {
    /** A share of the whole piece that a rule turns on. */
    enum Share {
        /** None: the part is left out whatever its share. */
        ANY,
        WEIGHT,
        AREA
    }

    /**
     * A case in which a part is left out.
     *
     * @param rule whose first figure is the limit, in percent
     * @param below whether the limit itself is too much already
     * @param phrase that then stands behind the content of the cloth; empty for none
     */
    record LeftOut(String rule, Share by, boolean below, String phrase) {
        /** Whether it holds of a part; null where its share does not tell. */
        @Nullable
        Boolean of(PieceComponent part, RuleTable rules) {
            if (by == Share.ANY) {
                return true;
            }
            Quantity share = share(part);
            if (!share.known() || share.about() || share.unit() != Unit.PERCENT) {
                return null;
            }
            double limit = limit(rules);
            if (share.high() != null && (below ? share.high() < limit : share.high() <= limit)) {
                return true;
            }
            return share.low() != null && (below ? share.low() >= limit : share.low() > limit) ? false : null;
        }

        Quantity share(PieceComponent part) {
            return by == Share.WEIGHT ? part.weightShare() : part.areaShare();
        }

        double limit(RuleTable rules) {
            return rules.rule(rule).figure(0);
        }
    }

    /**
     * What becomes of the parts.
     *
     * @param stated with their own content
     * @param leftOut the cases of those left out, of which something is said
     */
    record Decided(List<Component> stated, List<LeftOut> leftOut) {}

    private final RuleTable rules;
    /** Fibres that the words on the label name and no cloth has, so that they are claimed of a part. */
    private final List<FibreNames.Fibre> claimed;

    private final List<LabelRefusal> refusals;
    private final List<Question> questions;
    private final List<Component> stated = new ArrayList<>();
    private final List<LeftOut> leftOut = new ArrayList<>();

    private PartsBesideCloth(RuleTable rules, Article article, List<LabelRefusal> refusals, List<Question> questions) {
        this.rules = rules;
        this.claimed = FibreNames.namedIn(article.words()).stream()
                .filter(fibre -> article.components().stream().noneMatch(cloth -> has(cloth.content(), fibre)))
                .toList();
        this.refusals = refusals;
        this.questions = questions;
    }

    static Decided of(RuleTable rules, Article article, List<LabelRefusal> refusals, List<Question> questions) {
        PartsBesideCloth decided = new PartsBesideCloth(rules, article, refusals, questions);
        article.facts().components().forEach(decided::decide);
        return new Decided(decided.stated, decided.leftOut.stream().distinct().toList());
    }

    private void decide(PieceComponent part) {
        List<LeftOut> cases = part.kind() == null ? null : rules.parts().get(part.kind());
        if (cases == null) {
            inDoubt(
                    part,
                    rules.rule("trim"),
                    Message.of(
                            part.kind() == null ? "rules.part.no-kind" : "rules.part.not-read",
                            "part",
                            part.name(),
                            "market",
                            rules.name(),
                            "stated",
                            complete(part)));
            return;
        }
        Optional<LeftOut> holds = cases.stream()
                .filter(each -> Boolean.TRUE.equals(each.of(part, rules)))
                .findFirst();
        Optional<LeftOut> unknown =
                cases.stream().filter(each -> each.of(part, rules) == null).findFirst();
        boolean named = complete(part) && claimed.stream().anyMatch(fibre -> has(part.fibres(), fibre));
        if (named) {
            state(part);
        } else if (holds.isPresent()) {
            leftOut.add(holds.get());
        } else if (unknown.isPresent()) {
            inDoubt(part, rules.rule(unknown.get().rule()), share(part, unknown.get()));
        } else {
            state(part);
        }
    }

    private Message share(PieceComponent part, LeftOut unknown) {
        Quantity share = unknown.share(part);
        return Message.of(
                "rules.part.share",
                "part",
                part.name(),
                "of",
                unknown.by() == Share.WEIGHT ? "weight" : "surface",
                "below",
                unknown.below(),
                "limit",
                NumberWords.plain(unknown.limit(rules)),
                "recorded",
                share.recorded(),
                "share",
                share,
                "stated",
                complete(part));
    }

    private void inDoubt(PieceComponent part, Rule rule, Message asks) {
        questions.add(new Question(asks, rule));
        if (complete(part)) {
            state(part);
        }
    }

    private void state(PieceComponent part) {
        if (part.fibres().isEmpty()) {
            refusals.add(new LabelRefusal(
                    Message.of("rules.part.no-fibres", "part", part.name()),
                    rules.rule("components"),
                    Message.of("rules.part.record-fibres")));
            return;
        }
        stated.add(Component.of(part));
    }

    private static boolean has(List<FibreShare> shares, FibreNames.Fibre fibre) {
        return shares.stream()
                .anyMatch(share -> fibre.entries().contains(share.fibre().toLowerCase(Locale.ROOT)));
    }

    private static boolean complete(PieceComponent part) {
        return !part.fibres().isEmpty()
                && part.fibres().stream().map(FibreShare::percent).noneMatch(percent -> percent == null);
    }
}
