/**
 * A small layout engine: type measured glyph by glyph with the fonts' own kerning, wrapped, shrunk within a stated limit, and
 * set on a page in millimetres from the upper left corner.
 *
 * <p>Nothing is ever clipped or dropped: text that has no room is {@link tenterbook.label.layout.DoesNotFit}, a character that
 * no font here holds is {@link tenterbook.label.layout.CannotBeSet}. Knows nothing of labels. Start at {@link
 * tenterbook.label.layout.Column} and {@link tenterbook.label.layout.Ink}.
 */
package tenterbook.label.layout;
