/**
 * What the records say of one piece, read once: dips, condition, where it is, origin, cloth and fibres, colours. Searches, labels,
 * documents, pages and the API all read these facts here, so that no two of them can disagree; where two records disagree, that
 * is part of the fact.
 *
 * <p>A sentence that denies something is had from {@link tenterbook.facts.Denial} alone, which knows what would contradict it.
 * Reads records and writes none. Start at {@link tenterbook.facts.PieceFacts}; {@link tenterbook.facts.PieceReader} loads it.
 */
@NullMarked
package tenterbook.facts;

import org.jspecify.annotations.NullMarked;
