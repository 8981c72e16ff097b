package tenterbook.labelling.rule;

import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A question to the maker. It does not block the label.
 *
 * @param asks a question in plain words
 * @param rule why it matters
 */
public record Question(Written asks, Rule rule) implements Written {
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
