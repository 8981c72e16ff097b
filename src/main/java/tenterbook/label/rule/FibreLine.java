package tenterbook.label.rule;

/**
 * One line of required words, exactly as printed.
 *
 * @param kind what the line states
 * @param rule the rule it follows
 */
public record FibreLine(Kind kind, String text, Rule rule) {
    /** What a line states. */
    public enum Kind {
        CONTENT,
        ANIMAL_PARTS,
        ORIGIN
    }
}
