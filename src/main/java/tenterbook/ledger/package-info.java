/**
 * The archive folder and its ledger: append-only, hash-chained revisions in SQLite, the newest version of each record, and
 * references between records.
 *
 * <p>Promises: what {@link tenterbook.ledger.Ledger#write} has returned survives a killed process (tested by killing one; a
 * power cut is trusted to SQLite's {@code synchronous=FULL} and was not tested). One writer at a time, readers never wait.
 * Independent of what records mean: a {@link tenterbook.ledger.revision.Kind} describes them. Start at {@link
 * tenterbook.ledger.Ledger}.
 */
@NullMarked
package tenterbook.ledger;

import org.jspecify.annotations.NullMarked;
