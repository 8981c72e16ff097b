/**
 * Quantities as a maker writes them: a number or a range, with its unit and how it is known.
 *
 * <p>Promises: what was typed is kept beside what was understood; unknown is never zero; a range stays a range. Never does
 * I/O. Start at {@link tenterbook.measure.Quantity} and {@link tenterbook.measure.QuantityText}.
 */
package tenterbook.measure;
