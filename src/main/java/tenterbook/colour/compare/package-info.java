/**
 * Compares two pictures of one cloth: registration, fading by region, and depth and symmetry of the layers of a folded stack.
 *
 * <p>Pure functions on pixels. A picture that is unsuitable (too flat, unlike the other, out of view) is refused with the
 * reason; no number is given instead. The caller knows whether light and camera were the same: colours are compared as they are
 * in the pictures.
 *
 * <p>Start at {@link tenterbook.colour.compare.Registration}, {@link tenterbook.colour.compare.Fading} and {@link
 * tenterbook.colour.compare.LayerStack}.
 */
package tenterbook.colour.compare;
