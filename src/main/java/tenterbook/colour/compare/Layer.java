package tenterbook.colour.compare;

/**
 * One layer of a folded stack: its panel in the opened cloth, the cloth's length down the picture, its width across.
 *
 * @param number 1 at the first board
 * @param picture of the panel alone, upright, with the same light and camera as the others
 * @param mirroredLength whether the folds left its image reversed along the length
 * @param mirroredWidth whether the folds left its image reversed across the width
 */
public record Layer(int number, ComparedPicture picture, boolean mirroredLength, boolean mirroredWidth) {
    /** @throws IllegalStateException if the number is below 1 or the picture missing */
    public Layer {
        if (number < 1 || picture == null) {
            throw new IllegalStateException(
                    "A layer has a number from 1 and a picture; found: " + number + ", " + picture);
        }
    }

    /** Lightness as in the stack, with the folds' mirroring undone. */
    Plane asItLay() {
        return Plane.lightness(picture).mirrored(mirroredWidth, mirroredLength);
    }
}
