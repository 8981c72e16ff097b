package tenterbook.piece;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** A published method of testing colour fastness, or the maker's own. What each can show stands in {@code labelling.care}. */
public enum TestStandard implements Worded {
    OWN("own method", ""),
    ISO_105_C06("ISO 105-C06", "ISO[\\s-]*105[\\s-]*C0?6"),
    ISO_105_X12("ISO 105-X12", "ISO[\\s-]*105[\\s-]*X12"),
    ISO_105_B02("ISO 105-B02", "ISO[\\s-]*105[\\s-]*B0?2"),
    ISO_105_E01("ISO 105-E01", "ISO[\\s-]*105[\\s-]*E0?1"),
    AATCC_61("AATCC 61", "AATCC[\\s-]*(TM|TEST METHOD)?[\\s-]*61"),
    AATCC_8("AATCC 8", "AATCC[\\s-]*(TM|TEST METHOD)?[\\s-]*0?8"),
    AATCC_16("AATCC 16", "AATCC[\\s-]*(TM|TEST METHOD)?[\\s-]*16");

    private final String word;
    private final Pattern form;

    TestStandard(String word, String form) {
        this.word = word;
        this.form = Pattern.compile(form + "(?!\\d)");
    }

    /** The standard that a maker's own words name, as in 'ISO 105 C06, A2S' or 'AATCC TM61'; empty where they name none. */
    public static Optional<TestStandard> namedIn(String method) {
        String capitals = method.toUpperCase(Locale.ROOT);
        return Stream.of(values())
                .filter(s -> s != OWN && s.form.matcher(capitals).find())
                .findFirst();
    }

    @Override
    public Message word() {
        return Message.of("piece.standard." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
