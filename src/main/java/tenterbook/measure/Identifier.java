package tenterbook.measure;

import java.util.regex.Pattern;

/**
 * The name by which a record is known for ever. Each kind of record has a type of its own, so that a board's name cannot
 * be passed for a cloth's.
 */
public interface Identifier {
    /** Letters, digits, hyphen, dot, slash-free: usable in an address bar and as part of a file name. */
    Pattern FORM = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}._-]{0,39}");

    String value();

    /**
     * {@code value} without surrounding space, checked.
     *
     * @param kind what it names, for the message
     * @throws IllegalArgumentException if it is empty, longer than 40 or holds anything but letters, digits, '.', '-', '_'
     */
    static String checked(String kind, String value) {
        String plain = value == null ? "" : value.strip();
        if (!FORM.matcher(plain).matches()) {
            throw new IllegalArgumentException(
                    "A %s is named with up to 40 letters, digits, hyphens, dots or underscores, beginning with a letter or digit; found “%s”."
                            .formatted(kind, plain));
        }
        return plain;
    }
}
