/**
 * Colours measured from a photograph with something known in it: a grey card, a white and a black card, or a chart of 24
 * patches.
 *
 * <p>Pure functions. A card that is clipped, uneven or no card is refused with the reason; a picture without a card has
 * none, and none is guessed. Every measured colour says how it was corrected, under which white, and how far it may be
 * off. Corrections work on linear light and suppose that the camera kept to the sRGB curve, as its file claims.
 *
 * <p>Start with {@link tenterbook.colour.target.CardFinder}, {@link tenterbook.colour.target.CardReading} and
 * {@link tenterbook.colour.target.Correction}.
 */
package tenterbook.colour.target;
