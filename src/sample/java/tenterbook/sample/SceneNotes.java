package tenterbook.sample;

import java.util.List;

/**
 * What is known about a rendered photograph because it was rendered.
 *
 * @param cast gains on linear light put on the whole picture
 * @param greyCard the four corners of the grey card, pixels of the upright picture, clockwise from its upper left
 * @param greyCardReflectance of the card before the cast, 0 to 1
 * @param pixelsPerMm scale on the cloth
 */
record SceneNotes(
        Scene scene, Scene.Cast cast, List<double[]> greyCard, double greyCardReflectance, double pixelsPerMm) {}
