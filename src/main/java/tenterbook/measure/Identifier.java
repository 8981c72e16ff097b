package tenterbook.measure;

import java.util.regex.Pattern;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * The permanent name of a record. Each kind of record has a type of its own, so that a board's name cannot be passed as a
 * cloth's.
 */
public interface Identifier {
    /** Letters, digits, hyphen, dot and underscore: usable in an address bar and as part of a file name. */
    Pattern FORM = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}._-]{0,39}");

    String value();

    /**
     * {@code value} without surrounding space, checked.
     *
     * @param kind of thing that it names, with its article, as in 'A board pair'
     * @throws Refusal if it is empty, longer than 40 or holds anything but letters, digits, '.', '-', '_'
     */
    static String checked(Message kind, String value) {
        String plain = value == null ? "" : value.strip();
        if (!FORM.matcher(plain).matches()) {
            throw Refusal.of("measure.identifier", "kind", kind, "found", plain);
        }
        return plain;
    }
}
