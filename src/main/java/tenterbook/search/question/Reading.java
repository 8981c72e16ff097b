package tenterbook.search.question;

import java.util.List;
import tenterbook.search.query.Constraint;
import tenterbook.search.query.UserText;

/**
 * What a question was taken for.
 *
 * @param facts in the order in which they were typed
 * @param words that are no facts, in order; looked for in everything that is written of a piece
 */
public record Reading(List<Understood> facts, UserText words) {
    public static final Reading NOTHING = new Reading(List.of(), new UserText(List.of()));

    public Reading {
        facts = List.copyOf(facts);
    }

    public List<Constraint> constraints() {
        return facts.stream().map(Understood::constraint).toList();
    }
}
