package tenterbook.words;

import java.util.Locale;

/** What can be written for a person. As an argument of a {@link Message} it is written as the message is. */
@FunctionalInterface
public interface Written {
    String in(Conventions conventions);

    default String inEnglish() {
        return in(Conventions.english());
    }

    /** For the paper that this thread composes, see {@link PaperLanguage}; in English where it composes none. */
    default String onPaper() {
        return in(PaperLanguage.conventions());
    }

    /** The text with its first letter as a capital; an empty one as it is. */
    static String capital(String text) {
        int first = text.isEmpty() ? 0 : text.offsetByCodePoints(0, 1);
        return text.substring(0, first).toUpperCase(Locale.ROOT) + text.substring(first);
    }

    /** With a full stop, unless it is empty or has its own mark at the end. */
    static String stop(String text) {
        return text.isEmpty() || text.matches("(?s).*[.!?…]$") ? text : text + ".";
    }
}
