/**
 * Editions and sets: what is typed of a piece's place in one, read by {@link tenterbook.piece.edition.EditionPlace}, the one reader.
 * Which pieces belong together, and what may not be, is found by {@code archive.Editions}.
 */
@org.jspecify.annotations.NullMarked
package tenterbook.piece.edition;
