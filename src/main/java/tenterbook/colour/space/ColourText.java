package tenterbook.colour.space;

import java.util.regex.Pattern;

/** Reads a colour as a person types it. */
public final class ColourText {
    private static final Pattern BARE = Pattern.compile("[0-9a-fA-F]{6}");

    private ColourText() {}

    /**
     * Reads CIELAB such as {@code 34,-2,-25} (D65, 2°) or a screen colour such as {@code #2f4f7f}, with or without its hash.
     *
     * @throws IllegalArgumentException for anything else, quoting what was found
     */
    public static Lab read(String text) {
        String plain = text == null ? "" : text.strip();
        boolean screen = plain.startsWith("#") || BARE.matcher(plain).matches();
        return screen ? Srgb.parse(plain).lab() : Lab.parse(plain);
    }
}
