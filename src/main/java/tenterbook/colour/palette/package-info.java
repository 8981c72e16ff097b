/** The main colours of a picture, and the areas of a cloth in it. */
@NullMarked
package tenterbook.colour.palette;

import org.jspecify.annotations.NullMarked;
