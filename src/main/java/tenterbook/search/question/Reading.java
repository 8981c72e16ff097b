package tenterbook.search.question;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.Order;
import tenterbook.search.query.UserText;
import tenterbook.words.Message;

/**
 * What a question was taken for.
 *
 * @param facts in the order in which they were typed
 * @param words that are no facts, in order; looked for in everything that is written of a piece
 * @param weighing words of facts: pieces that have them come first, others are found all the same
 * @param order as in 'the largest'; null where none was asked for
 * @param offers other ways in which it may have been meant
 * @param remarks sentences on what of it could not be read
 */
public record Reading(
        List<Understood> facts,
        UserText words,
        UserText weighing,
        @Nullable Order order,
        List<Offer> offers,
        List<Message> remarks) {
    public static final Reading NOTHING =
            new Reading(List.of(), UserText.NONE, UserText.NONE, null, List.of(), List.of());

    public Reading {
        facts = List.copyOf(facts);
        offers = List.copyOf(offers);
        remarks = List.copyOf(remarks);
    }

    public List<Constraint> constraints() {
        return facts.stream()
                .map(Understood::constraint)
                .filter(Objects::nonNull)
                .toList();
    }
}
