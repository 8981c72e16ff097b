package tenterbook.colour.palette;

import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.SrgbToLab;

/** How the colour of a pixel is read: as the picture has it, or corrected. */
@FunctionalInterface
public interface PixelColour {
    /** As the picture has it. */
    PixelColour SEEN = (light, out, at) -> SrgbToLab.ofLinear(light.red(), light.green(), light.blue(), out, at);

    /** Writes L, a, b of a pixel's light at {@code out[at]} to {@code out[at + 2]}. */
    void write(LinearRgb light, double[] out, int at);
}
