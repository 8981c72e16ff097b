package tenterbook.labelling.issue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.facts.Availability;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.issue.HangTagStatus.Standing;
import tenterbook.labelling.rule.Market;
import tenterbook.piece.fair.Fair;
import tenterbook.words.Message;
import tenterbook.words.Worded;
import tenterbook.words.Written;

/**
 * What a piece lacks for a fair.
 *
 * @param sentence what is to be done or is in the way
 */
public record FairNeed(Kind kind, Written sentence) {
    /** In the order in which it is shown. */
    public enum Kind implements Worded {
        AVAILABLE("available"),
        PHOTOGRAPH("photograph"),
        TITLE("title"),
        PRICE("price"),
        TAG("tag"),
        CONDITION("condition");

        private final String code;

        Kind(String code) {
            this.code = code;
        }

        @Override
        public Message word() {
            return Message.of("fair.need." + code);
        }

        @Override
        public String toString() {
            return inEnglish();
        }
    }

    /** The market whose rules hold there; empty where its country is not recorded or has no table of rules. */
    public static Optional<Market> market(Fair fair) {
        return fair.soldIn().isEmpty() ? Optional.empty() : Market.selling(fair.soldIn());
    }

    /** @param tag how it stands with its tag in the fair's market; null where that market is not known */
    public static List<FairNeed> of(PieceFacts facts, Fair fair, @Nullable Standing tag, LocalDate today) {
        List<FairNeed> needs = new ArrayList<>();
        Availability.refusal(facts, fair, today).ifPresent(why -> needs.add(new FairNeed(Kind.AVAILABLE, why)));
        if (facts.pictures().isEmpty()) {
            needs.add(new FairNeed(Kind.PHOTOGRAPH, Message.of("fair.lacks.photograph")));
        }
        if (facts.piece().title().isEmpty()) {
            needs.add(new FairNeed(Kind.TITLE, Message.of("fair.lacks.title")));
        }
        if (facts.piece().price() == null) {
            needs.add(new FairNeed(Kind.PRICE, Message.of("fair.lacks.price")));
        }
        if (tag != null) {
            tag(tag).ifPresent(why -> needs.add(new FairNeed(Kind.TAG, why)));
        }
        condition(facts).ifPresent(why -> needs.add(new FairNeed(Kind.CONDITION, why)));
        return needs;
    }

    private static Optional<Message> tag(Standing tag) {
        return switch (tag.state()) {
            case CURRENT -> Optional.empty();
            case NONE ->
                Optional.of(Message.of("fair.lacks.tag", "market", tag.market().place()));
            case OUT_OF_DATE ->
                Optional.of(Message.of(
                        "fair.lacks.tag-of-today", "market", tag.market().place()));
            case REFUSED ->
                Optional.of(Message.of(
                        "fair.lacks.lawful-tag",
                        "market",
                        tag.market().place(),
                        "why",
                        tag.reasons().isEmpty() ? "" : tag.reasons().get(0)));
        };
    }

    private static Optional<Message> condition(PieceFacts facts) {
        if (facts.condition().lastLooked().isEmpty()) {
            return Optional.of(Message.of("fair.lacks.examination"));
        }
        return facts.condition().since().isEmpty()
                ? Optional.empty()
                : Optional.of(Message.of(
                        "fair.lacks.examination-since",
                        "event",
                        facts.condition().since().get(0).kind()));
    }
}
