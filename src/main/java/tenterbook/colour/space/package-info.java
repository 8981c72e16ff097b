/** Colours as numbers and words: sRGB, CIELAB (D65, 2° observer), CIEDE2000, plain names. */
@NullMarked
package tenterbook.colour.space;

import org.jspecify.annotations.NullMarked;
