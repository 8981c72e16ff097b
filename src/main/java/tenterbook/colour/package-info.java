/**
 * Colour in numbers and in words: sRGB, CIELAB (D65, 2° observer), CIEDE2000, plain names, depth of shade, the grey scale,
 * and the main colours of a picture.
 *
 * <p>Pure functions on values; nothing here reads a file, keeps a state or knows another room. The same input always
 * gives the same answer. A colour is never changed silently: what lies outside sRGB says so.
 *
 * <p>Start with {@link tenterbook.colour.Lab}, then {@link tenterbook.colour.Ciede2000} and
 * {@link tenterbook.colour.Palette}.
 */
package tenterbook.colour;
