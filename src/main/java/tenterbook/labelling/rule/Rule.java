package tenterbook.labelling.rule;

/**
 * A rule as this program has it.
 *
 * @param says the requirement, in plain words
 * @param citation its source
 * @param status {@code read} where the source was read, {@code from memory: verify} otherwise
 */
public record Rule(String says, String citation, String status) {}
