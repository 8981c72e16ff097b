package tenterbook.colour.space;

import java.util.Locale;
import java.util.regex.Pattern;
import tenterbook.words.Refusal;

/**
 * A screen colour: sRGB (IEC 61966-2-1), encoded, whole numbers.
 *
 * @param red 0 to 255
 * @param green 0 to 255
 * @param blue 0 to 255
 */
public record Srgb(int red, int green, int blue) {
    private static final Pattern FORM = Pattern.compile("#?[0-9a-fA-F]{6}");

    /** @throws IllegalArgumentException if a component is outside 0 to 255, naming which one */
    public Srgb {
        inRange("red", red);
        inRange("green", green);
        inRange("blue", blue);
    }

    /**
     * Reads {@code #rrggbb}, with or without the hash, in either case.
     *
     * @throws IllegalArgumentException for anything else, quoting what was found
     */
    public static Srgb parse(String text) {
        String trimmed = text == null ? "" : text.strip();
        if (!FORM.matcher(trimmed).matches()) {
            throw Refusal.of("colour.srgb.unreadable", "found", String.valueOf(text));
        }
        return ofRgb(Integer.parseInt(trimmed.substring(trimmed.length() - 6), 16));
    }

    /** The lowest 24 bits of a packed pixel (0xAARRGGBB); alpha is ignored. */
    public static Srgb ofRgb(int packed) {
        return new Srgb(packed >> 16 & 0xff, packed >> 8 & 0xff, packed & 0xff);
    }

    /** {@code #rrggbb}, lower case, as a style sheet takes it. */
    public String hex() {
        return String.format(Locale.ROOT, "#%02x%02x%02x", red, green, blue);
    }

    /** The same colour in CIELAB (D65, 2° observer). */
    public Lab lab() {
        double[] lab = new double[3];
        SrgbToLab.convert(red, green, blue, lab, 0);
        return new Lab(lab[0], lab[1], lab[2]);
    }

    private static void inRange(String name, int value) {
        if (value < 0 || value > 255) {
            throw Refusal.of("colour.srgb.range", "part", name, "found", value);
        }
    }
}
