package tenterbook.typeset;

import java.util.Locale;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** A text has a character that cannot be set; nothing is substituted. */
public final class UnsupportedCharacter extends Refusal {
    private static final long serialVersionUID = 1L;

    UnsupportedCharacter(String text, int codePoint, Written why) {
        super(Message.of(
                "layout.cannot-be-set",
                "text",
                text,
                "why",
                why,
                "code",
                "U+%04X".formatted(codePoint),
                "character",
                name(codePoint)));
    }

    /** The same, with the place where it stands. */
    public UnsupportedCharacter(Written where, UnsupportedCharacter cause) {
        super(Message.of("layout.at", "where", where, "why", cause.explanation()), cause);
    }

    private static Object name(int codePoint) {
        String name = Character.getName(codePoint);
        return name == null ? Message.of("layout.no-character") : name.toLowerCase(Locale.ROOT);
    }
}
