package tenterbook.archive.field;

import java.util.Currency;

/**
 * What stands behind a text that leaves something unsaid.
 *
 * @param currency meant where a price names none
 */
public record Reading(Currency currency) {}
