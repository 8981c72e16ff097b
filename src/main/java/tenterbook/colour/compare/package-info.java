/**
 * Two pictures of one cloth laid over each other, and what changed between them: registration, fading by region, and how
 * the layers of a folded stack compare in depth and symmetry.
 *
 * <p>Pure functions on pixels. A picture that cannot carry the answer (too flat, unlike the other, out of view) is "not
 * measurable", with the reason; no number is given in its place. Whether light and camera were the same is for the
 * caller to know: colours are compared as they stand in the pictures.
 *
 * <p>Start at {@link tenterbook.colour.compare.Registration}, {@link tenterbook.colour.compare.Fading} and
 * {@link tenterbook.colour.compare.LayerStack}.
 */
package tenterbook.colour.compare;
