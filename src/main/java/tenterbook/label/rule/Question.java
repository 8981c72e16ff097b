package tenterbook.label.rule;

/**
 * A doubt put to the maker. It does not stop the label.
 *
 * @param asks a question in plain words
 * @param rule why it matters
 */
public record Question(String asks, Rule rule) {
    @Override
    public String toString() {
        return "%s (%s)".formatted(asks, rule.citation());
    }
}
