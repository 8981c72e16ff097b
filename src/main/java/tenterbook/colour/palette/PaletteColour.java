package tenterbook.colour.palette;

import java.util.Objects;
import tenterbook.colour.space.Lab;
import tenterbook.measure.NumberWords;
import tenterbook.words.Refusal;

/**
 * One of the main colours of a picture and how much of the picture it covers.
 *
 * @param colour CIELAB, D65, 2° observer
 * @param share part of the counted area, above 0 and at most 1
 */
public record PaletteColour(Lab colour, double share) {
    /** @throws IllegalArgumentException if the share is not above 0 and at most 1 */
    public PaletteColour {
        Objects.requireNonNull(colour, "colour");
        if (!(share > 0 && share <= 1 + 1e-9)) {
            throw Refusal.of("colour.palette-share", "found", NumberWords.plain(share));
        }
    }
}
