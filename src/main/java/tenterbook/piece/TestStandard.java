package tenterbook.piece;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A published method of testing colour fastness, or the maker's own. What each can show is the label room's to say. */
public enum TestStandard {
    OWN("own method", ""),
    ISO_105_C06("ISO 105-C06", "ISO105C0?6"),
    ISO_105_X12("ISO 105-X12", "ISO105X12"),
    ISO_105_B02("ISO 105-B02", "ISO105B0?2"),
    ISO_105_E01("ISO 105-E01", "ISO105E0?1"),
    AATCC_61("AATCC 61", "AATCC61"),
    AATCC_8("AATCC 8", "AATCC0?8"),
    AATCC_16("AATCC 16", "AATCC16");

    private final String word;
    private final Pattern form;

    TestStandard(String word, String form) {
        this.word = word;
        this.form = Pattern.compile(form + "(?!\\d)");
    }

    /** The standard that a maker's own words name, as in 'ISO 105 C06, A2S' or 'AATCC TM61'; empty where they name none. */
    public static Optional<TestStandard> namedIn(String method) {
        String plain = method.toUpperCase(Locale.ROOT)
                .replaceAll("\\bTM(?=\\s*\\d)|\\bTM\\b|\\bTEST METHOD\\b|\\bEN\\b", "")
                .replaceAll("[\\s:-]+(?=(19|20)\\d\\d\\b)", ";")
                .replaceAll("[\\s-]+", "");
        return Stream.of(values())
                .filter(s -> s != OWN && s.form.matcher(plain).find())
                .findFirst();
    }

    @Override
    public String toString() {
        return word;
    }
}
