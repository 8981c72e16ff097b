/**
 * Colour in numbers and in words: sRGB, CIELAB (D65, 2° observer), CIEDE2000, plain names, depth of shade, the grey scale,
 * the main colours of a picture and the areas of a cloth in it. How a photograph's colours become measured ones is told in
 * {@code tenterbook.colour.target}; how two pictures compare, in {@code tenterbook.colour.compare}.
 *
 * <p>Pure functions on values; nothing here reads a file, keeps a state or knows another room. The same input always
 * gives the same answer. A colour is never changed silently: what lies outside sRGB says so.
 *
 * <p>Start with {@link tenterbook.colour.space.Lab}, then {@link tenterbook.colour.space.Ciede2000} and
 * {@link tenterbook.colour.palette.Palette}.
 */
package tenterbook.colour;
