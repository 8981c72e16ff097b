/**
 * Documents of one or more pages: words first, as {@link tenterbook.documents.DocumentText}, then paper.
 *
 * <p>The words are composed in {@code documents.kind} from the archive's records only, in the
 * language of their settings; they go to and from the lines of an
 * issued paper without loss ({@link tenterbook.documents.DocumentLines}), and the PDF of an issued paper is a stored file
 * ({@link tenterbook.documents.issue.PaperPdf}). {@code documents.layout} lays any document on pages. Nothing is clipped: words
 * without room are named in a refusal.
 */
package tenterbook.documents;
