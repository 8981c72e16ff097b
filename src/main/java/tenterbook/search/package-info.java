/**
 * Finding pieces: a Lucene index that follows the ledger, full text, facets, ranges and colour.
 *
 * <p>Promises: the index can be deleted at any time and is rebuilt from the ledger; a search begun after a write has
 * returned sees that write; a colour search loses no piece that a full CIEDE2000 scan would find; any text a person types
 * is safe. Facets that other rooms find come in through {@link tenterbook.search.index.OutsideFacets}. Never writes to the ledger.
 * Start at {@link tenterbook.search.PieceIndex} and {@link tenterbook.search.query.PieceQuery}.
 */
package tenterbook.search;
