package tenterbook.label.layout;

/**
 * A colour to print, sRGB.
 *
 * @param red 0 to 255, and so the others
 */
public record Tone(int red, int green, int blue) {
    public static final Tone BLACK = new Tone(0, 0, 0);

    /** The same in black only: the grey of equal luma (Rec. 601 weights). */
    public Tone grey() {
        int grey = (int) Math.round(0.299 * red + 0.587 * green + 0.114 * blue);
        return new Tone(grey, grey, grey);
    }

    boolean neutral() {
        return red == green && green == blue;
    }
}
