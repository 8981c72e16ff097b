/**
 * What goes into a piece: bolts of cloth with their fibre content, and lots of dye, mordant and other chemicals.
 * Facts only; no I/O.
 */
@NullMarked
package tenterbook.material;

import org.jspecify.annotations.NullMarked;
