/**
 * The kinds of record an archive keeps, how they become JSON, and one typed door to the ledger and the photographs.
 *
 * <p>This room exists so that the domain rooms need not know the ledger, nor the ledger the domain. Start at {@link
 * tenterbook.archive.Archive} and {@link tenterbook.archive.Kinds}.
 */
@NullMarked
package tenterbook.archive;

import org.jspecify.annotations.NullMarked;
