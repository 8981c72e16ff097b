package tenterbook.search.question;

import tenterbook.search.query.Constraint;
import tenterbook.words.Message;

/**
 * Some tokens that are a fact.
 *
 * @param end the first token after them
 * @param label without whether it must not be so
 * @param deniedOnly whether it is one only after 'without' and the like, as 'price' is in 'without price'; the constraint is then
 *     what it asks with that word before it
 * @param weighs whether a piece that has the very words comes before others that meet the constraint
 */
record Match(int end, Constraint constraint, Message label, boolean deniedOnly, boolean weighs) {
    Match(int end, Constraint constraint, Message label) {
        this(end, constraint, label, false, false);
    }

    /** Something that reads facts from tokens. */
    interface Matcher {
        /** The fact that begins at a token; null where none does. */
        Match at(java.util.List<Token> tokens, int from);
    }
}
