package tenterbook.archive.record;

import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.field.Field;
import tenterbook.archive.field.ListOf;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Value;
import tenterbook.words.Joined;
import tenterbook.words.Message;

/**
 * The words about a field: its label, and the sentence where it is missing. They are in {@code words/fields.properties} under
 * the record's name and the field's, as in {@code piece.finished} and {@code lot.name.missing}.
 */
public final class FieldWords {
    private FieldWords() {}

    /** The sentence about a required field that was left out. */
    public static Message missing(Part<?> part, Field<?, ?> field) {
        String own = key(part, field) + ".missing";
        return Message.of(Message.exists(own) ? own : "fields.missing");
    }

    /** As in 'finished on'. */
    public static Message label(Part<?> part, Field<?, ?> field) {
        return Message.of(key(part, field));
    }

    private static String key(Part<?> part, Field<?, ?> field) {
        return "fields." + part.name() + "." + field.name();
    }

    /**
     * A dotted name in words, as in 'step 2, temperature' for {@code steps.1.temperature}.
     *
     * @throws IllegalStateException where the description has no such field
     */
    public static Joined path(Part<?> part, String dotted) {
        List<Message> words = new ArrayList<>();
        Value<?> value = part;
        for (String name : dotted.split("\\.")) {
            if (name.matches("\\d+")) {
                int last = words.size() - 1;
                words.set(
                        last, Message.of("fields.row", "list", words.get(last), "number", Integer.parseInt(name) + 1));
                value = value instanceof ListOf<?> list ? list.element() : value;
            } else if (value instanceof Part<?> inner) {
                Field<?, ?> field = inner.field(name)
                        .orElseThrow(() -> new IllegalStateException(part.name() + " has no field " + dotted));
                words.add(label(inner, field));
                value = field.value();
            } else {
                words.add(Message.of("fields.basis"));
            }
        }
        return new Joined(", ", words);
    }
}
