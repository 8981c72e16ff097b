/**
 * A small layout engine: type measured glyph by glyph with the fonts' own kerning, wrapped, shrunk within a stated limit, and
 * set on a page in millimetres from the upper left corner.
 *
 * <p>Nothing is ever clipped or dropped: text that has no room is {@link tenterbook.typeset.DoesNotFit}, a character that
 * no font here holds is {@link tenterbook.typeset.UnsupportedCharacter}. Knows nothing of labels. Start at {@link
 * tenterbook.typeset.TextColumn} and {@link tenterbook.typeset.PdfCanvas}.
 */
package tenterbook.typeset;
