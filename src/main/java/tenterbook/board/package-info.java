/** Board pairs, their states (recarving opens a new one), and the holes through which colour is put. Facts only; no I/O. */
@NullMarked
package tenterbook.board;

import org.jspecify.annotations.NullMarked;
