/**
 * The words of each kind of document, composed from the archive's records and from what the maker chose and typed. Nothing is
 * invented: what is not recorded is printed as such. Start at {@link tenterbook.documents.kind.Composition}.
 */
package tenterbook.documents.kind;
