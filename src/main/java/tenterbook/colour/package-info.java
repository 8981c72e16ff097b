/**
 * Colour in numbers and in words: sRGB, CIELAB (D65, 2° observer), CIEDE2000, plain names, depth of shade, the grey scale, the
 * main colours of a picture and the areas of a cloth in it. {@code tenterbook.colour.target} measures colours in photographs;
 * {@code tenterbook.colour.compare} compares two pictures.
 *
 * <p>Pure functions on values; no I/O and no state. The same input always gives the same answer.
 *
 * <p>Start with {@link tenterbook.colour.space.Lab}, then {@link tenterbook.colour.space.Ciede2000} and {@link
 * tenterbook.colour.palette.Palette}.
 */
package tenterbook.colour;
