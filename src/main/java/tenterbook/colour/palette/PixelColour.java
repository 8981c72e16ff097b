package tenterbook.colour.palette;

/** How the colour of a pixel is read: as the picture has it, or corrected. */
@FunctionalInterface
public interface PixelColour {
    /** Writes L, a, b of an encoded sRGB pixel, each component 0 to 255, at {@code out[at]} to {@code out[at + 2]}. */
    void write(int red, int green, int blue, double[] out, int at);
}
