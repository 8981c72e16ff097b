/**
 * The finished piece: what it is, its clampings, photographs, faults and events, where it is, and the people and places
 * concerned. Facts only; no I/O. Start at {@link tenterbook.piece.Piece}.
 */
@NullMarked
package tenterbook.piece;

import org.jspecify.annotations.NullMarked;
