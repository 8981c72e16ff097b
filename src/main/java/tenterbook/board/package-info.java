/**
 * Board pairs: two boards carved in mirror image, the states a recarving opens, and the holes through which colour is put.
 * Facts only; no I/O.
 */
@NullMarked
package tenterbook.board;

import org.jspecify.annotations.NullMarked;
