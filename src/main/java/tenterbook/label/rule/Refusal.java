package tenterbook.label.rule;

/**
 * Why a line cannot be printed.
 *
 * @param found what stands in the record
 * @param rule the rule that forbids it
 * @param fix what to do next
 */
public record Refusal(String found, Rule rule, String fix) {
    @Override
    public String toString() {
        return "%s. %s (%s). %s.".formatted(found, rule.says(), rule.citation(), fix);
    }
}
