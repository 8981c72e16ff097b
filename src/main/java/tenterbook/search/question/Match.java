package tenterbook.search.question;

import java.util.List;
import tenterbook.search.query.Constraint;
import tenterbook.words.Message;

/**
 * Some tokens that are a fact.
 *
 * @param end the first token after them
 * @param label without whether it must not be so
 * @param deniedOnly whether it is one only after 'without', 'with' and the like, as 'price' is in 'without price'; the constraint is
 *     then what it asks with 'without' before it
 * @param weighs whether a piece that has the very words comes before others that meet the constraint
 * @param others what may have been meant instead, each as it would be typed in their place
 * @param related whether the others are not what may have been meant, but the same dye by another name
 */
record Match(
        int end,
        Constraint constraint,
        Message label,
        boolean deniedOnly,
        boolean weighs,
        List<String> others,
        boolean related) {
    Match(int end, Constraint constraint, Message label) {
        this(end, constraint, label, false, false, List.of(), false);
    }

    Match offering(List<String> instead) {
        return new Match(end, constraint, label, deniedOnly, weighs, List.copyOf(instead), false);
    }

    Match offeringRelatives(List<String> relatives) {
        return new Match(end, constraint, label, deniedOnly, weighs, List.copyOf(relatives), true);
    }

    Match weighing() {
        return new Match(end, constraint, label, deniedOnly, true, others, related);
    }

    /** Something that reads facts from tokens. */
    interface Matcher {
        /** The fact that begins at a token; null where none does. */
        Match at(List<Token> tokens, int from);
    }
}
