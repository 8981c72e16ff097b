/** What events make of a piece: where it stands, which event may follow which, and the acts that write them. */
@NullMarked
package tenterbook.piece.history;

import org.jspecify.annotations.NullMarked;
