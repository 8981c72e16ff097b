/**
 * What the rules of labels need to know of a piece and of the studio beside recipe and cloth: the parts of a piece besides its
 * cloth, where it is sold, and what the maker answered to the questions of the rules.
 *
 * <p>Facts only; which of them a market's rule turns on stands in {@code labelling.rule}. No I/O. Start at
 * {@link tenterbook.piece.label.LabelFacts}.
 */
@NullMarked
package tenterbook.piece.label;

import org.jspecify.annotations.NullMarked;
