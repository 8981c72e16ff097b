package tenterbook.archive.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import tenterbook.archive.field.Field;
import tenterbook.archive.field.ListOf;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Value;

/**
 * The words about a field: its label, and what is said where it is missing. They stand in {@code words/fields.properties} under the
 * record's name and the field's, as in {@code piece.finished} and {@code lot.name.missing}.
 */
public final class FieldWords {
    private static final ResourceBundle WORDS = ResourceBundle.getBundle("words/fields", Locale.ROOT);

    private FieldWords() {}

    /** The sentence about a required field that was left out. */
    public static String missing(Part<?> part, Field<?, ?> field) {
        String key = part.name() + "." + field.name() + ".missing";
        return WORDS.containsKey(key)
                ? WORDS.getString(key)
                : WORDS.getString("missing").replace("{field}", label(part, field));
    }

    /** As in 'finished on'. */
    public static String label(Part<?> part, Field<?, ?> field) {
        String key = part.name() + "." + field.name();
        try {
            return WORDS.getString(key);
        } catch (MissingResourceException e) {
            throw new IllegalStateException("words/fields.properties lacks " + key, e);
        }
    }

    /**
     * A dotted name in words, as in 'step 2, temperature' for {@code steps.1.temperature}.
     *
     * @throws IllegalStateException where the description has no such field
     */
    public static String path(Part<?> part, String dotted) {
        List<String> words = new ArrayList<>();
        Value<?> value = part;
        for (String name : dotted.split("\\.")) {
            if (name.matches("\\d+")) {
                words.set(words.size() - 1, words.get(words.size() - 1) + " " + (Integer.parseInt(name) + 1));
                value = value instanceof ListOf<?> list ? list.element() : value;
            } else if (value instanceof Part<?> inner) {
                Field<?, ?> field = inner.field(name)
                        .orElseThrow(() -> new IllegalStateException(part.name() + " has no field " + dotted));
                words.add(label(inner, field));
                value = field.value();
            } else {
                words.add(WORDS.getString("basis"));
            }
        }
        return String.join(", ", words);
    }
}
