/**
 * Facts about one piece, derived from the records: dips, condition, where it is, origin, cloth and fibres, colours. Searches,
 * labels, documents, pages and the API all read these facts here, so that no two of them can disagree; where two records
 * disagree, that is part of the fact.
 *
 * <p>Sentences that deny something come from {@link tenterbook.facts.Denial} only, which knows what would contradict them.
 * Reads records and writes none. Start at {@link tenterbook.facts.PieceFacts}; {@link tenterbook.facts.PieceReader} loads it.
 */
@NullMarked
package tenterbook.facts;

import org.jspecify.annotations.NullMarked;
