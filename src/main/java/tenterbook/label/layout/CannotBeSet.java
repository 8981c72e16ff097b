package tenterbook.label.layout;

import java.util.Locale;

/** A text holds a character that cannot be set as it should stand; nothing is put in its place. */
public final class CannotBeSet extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    CannotBeSet(String text, int codePoint, String why) {
        super("“%s” cannot be set on paper: %s (U+%04X, %s). Write it another way for the paper."
                .formatted(text, why, codePoint, name(codePoint)));
    }

    /** The same, with the place where it stands. */
    public CannotBeSet(String where, CannotBeSet cause) {
        super(where + ": " + cause.getMessage(), cause);
    }

    private static String name(int codePoint) {
        String name = Character.getName(codePoint);
        return name == null ? "no character" : name.toLowerCase(Locale.ROOT);
    }
}
