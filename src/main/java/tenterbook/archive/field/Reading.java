package tenterbook.archive.field;

import java.util.Currency;

/**
 * Defaults for reading a text.
 *
 * @param currency of a price that names none
 */
public record Reading(Currency currency) {}
