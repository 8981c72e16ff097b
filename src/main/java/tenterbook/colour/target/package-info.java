/**
 * Colours measured in a photograph with a known target: a grey card, a white and a black card, or a chart of 24 patches.
 *
 * <p>Pure functions. A card that is clipped, uneven or not a card is refused with the reason; no card is guessed. Every
 * measured colour has its calibration, its white and its likely error. Corrections work on linear light and assume that the
 * camera followed the sRGB curve, as its file states.
 *
 * <p>Start with {@link tenterbook.colour.target.CardFinder}, {@link tenterbook.colour.target.CardReading} and {@link
 * tenterbook.colour.target.Correction}.
 */
package tenterbook.colour.target;
