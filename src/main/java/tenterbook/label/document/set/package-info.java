/**
 * Lays any {@link tenterbook.label.document.DocumentText} on pages of any size: one setter for all documents.
 *
 * <p>Blocks become slabs, stretches of a page that are never split; {@link tenterbook.label.document.set.Pages} puts them on
 * pages, keeping together what belongs together. Start at {@link tenterbook.label.document.set.DocumentPaper}.
 */
package tenterbook.label.document.set;
