package tenterbook.label.rule;

/**
 * One care instruction or warning, exactly as printed.
 *
 * @param evidence the test or tests it rests on, in words; says so where there is none
 */
public record CareLine(String text, String evidence, Rule rule) {}
