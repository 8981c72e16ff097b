/**
 * Quantities as a maker writes them: a number or a range, with its unit and how it is known.
 *
 * <p>'Not recorded' has one spelling for each kind of value, here and in every room above: text is empty, a list is empty, a
 * quantity or a date is its {@code UNRECORDED}, and a choice, a reference, a number or an amount is null and marked {@code
 * @Nullable}. No enum has a constant for it, and none of these values is stored. The constructors of records also take null for
 * text, lists, quantities and dates, which older ledgers leave out, and replace it.
 *
 * <p>Promises: what was typed is kept beside what was understood; unknown is never zero; a range stays a range. Never does I/O.
 * Start at {@link tenterbook.measure.Quantity} and {@link tenterbook.measure.QuantityText}.
 */
@NullMarked
package tenterbook.measure;

import org.jspecify.annotations.NullMarked;
