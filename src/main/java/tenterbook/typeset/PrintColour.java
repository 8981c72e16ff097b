package tenterbook.typeset;

/**
 * A colour to print, sRGB.
 *
 * @param red 0 to 255, and so the others
 */
public record PrintColour(int red, int green, int blue) {
    public static final PrintColour BLACK = new PrintColour(0, 0, 0);

    /** The same in black only: the grey of equal luma (Rec. 601 weights). */
    public PrintColour grey() {
        int grey = (int) Math.round(0.299 * red + 0.587 * green + 0.114 * blue);
        return new PrintColour(grey, grey, grey);
    }

    boolean neutral() {
        return red == green && green == blue;
    }
}
