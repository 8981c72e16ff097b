/** Fairs, exhibitions and markets: which pieces go there, and what has to be done before. Facts only; no I/O. */
@NullMarked
package tenterbook.piece.fair;

import org.jspecify.annotations.NullMarked;
