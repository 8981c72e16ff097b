/** Loans and consignments, as they were agreed. Facts only; no I/O. */
@NullMarked
package tenterbook.piece.agreement;

import org.jspecify.annotations.NullMarked;
