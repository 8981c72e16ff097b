package tenterbook.labelling.rule;

import org.jspecify.annotations.Nullable;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A question to the maker. It does not block the label.
 *
 * @param asks a question in plain words
 * @param rule why it matters
 * @param mend which record answers it, where an answer in words does not: what the rule requires would still be missing; else null
 */
public record Question(Written asks, Rule rule, LabelRefusal.@Nullable Mend mend) implements Written {
    /** A question that can be answered in words. */
    public Question(Written asks, Rule rule) {
        this(asks, rule, null);
    }

    Question mendedIn(LabelRefusal.Mend record) {
        return new Question(asks, rule, record);
    }

    @Override
    public String in(Conventions conventions) {
        return Message.of("rules.question", "asks", asks, "citation", rule.citation())
                .in(conventions);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
