/**
 * Lays any {@link tenterbook.documents.DocumentText} on pages of any size: one setter for all documents.
 *
 * <p>Blocks become slabs, stretches of a page that are never split; {@link tenterbook.documents.layout.PageBreaker} puts them on
 * pages, keeping together what belongs together. Start at {@link tenterbook.documents.layout.DocumentPaper}.
 */
package tenterbook.documents.layout;
