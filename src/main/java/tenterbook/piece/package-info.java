/**
 * The finished piece: what it is, what it was made in, its photographs and faults, where it is and what happened to it,
 * and the people and places concerned. Facts only; no I/O. Start at {@link tenterbook.piece.Piece}.
 */
@NullMarked
package tenterbook.piece;

import org.jspecify.annotations.NullMarked;
