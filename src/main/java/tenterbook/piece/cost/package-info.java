/** What a piece cost, and the price that follows from it. */
@NullMarked
package tenterbook.piece.cost;

import org.jspecify.annotations.NullMarked;
