/**
 * Sheets that a maker already has, as CSV, xlsx or ods: reading them row by row, matching their columns with fields, a verdict for
 * every row before anything is written, writing in bounded batches, and one undo for the whole import. Also the way out: templates
 * and exports with the same columns.
 *
 * <p>Promises: no formula is run; a value goes through the description of its field as one typed into a form does; an empty cell
 * changes nothing; what was imported is found again in the ledger by the note of its revisions. Start at
 * {@link tenterbook.exchange.sheet.SheetImport}.
 */
@NullMarked
package tenterbook.exchange.sheet;

import org.jspecify.annotations.NullMarked;
