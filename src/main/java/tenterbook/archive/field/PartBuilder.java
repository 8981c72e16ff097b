package tenterbook.archive.field;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import tenterbook.words.Message;

/** Builds a {@link Part}: its fields, in the order in which they are shown and stored. */
public final class PartBuilder<T> {
    final String name;
    final Map<String, Field<T, ?>> fields = new LinkedHashMap<>();
    private Field<T, ?> last;
    String blamed = "";
    String key = "";
    Function<T, Optional<Message>> doubt = record -> Optional.empty();
    Function<String, T> once;

    PartBuilder(String name) {
        this.name = name;
    }

    public <V> PartBuilder<T> field(String fieldName, Value<V> value, Function<T, V> get) {
        return put(new Field<>(fieldName, value, get));
    }

    private <V> PartBuilder<T> put(Field<T, V> field) {
        if (fields.put(field.name(), field) != null
                && last != null
                && !field.name().equals(last.name())) {
            throw new IllegalStateException("%s: the field “%s” stands twice".formatted(name, field.name()));
        }
        last = field;
        return this;
    }

    public PartBuilder<T> text(String fieldName, Function<T, String> get) {
        return field(fieldName, Plain.TEXT, get);
    }

    public <E> PartBuilder<T> list(String fieldName, Value<E> element, Function<T, List<E>> get) {
        return field(fieldName, new ListOf<>(element), get);
    }

    public <E extends Enum<E>> PartBuilder<T> choice(String fieldName, Codes<E> codes, Function<T, E> get) {
        return field(fieldName, new Choice<>(codes), get);
    }

    /** The last field is refused where it is left out of a new input. */
    public PartBuilder<T> required() {
        return required(last);
    }

    private <V> PartBuilder<T> required(Field<T, V> field) {
        return put(new Field<>(field.name(), field.value(), field.get(), true, field.privacy()));
    }

    /** The last field is about a person or money. */
    public PartBuilder<T> personal() {
        return personal(last);
    }

    private <V> PartBuilder<T> personal(Field<T, V> field) {
        return put(new Field<>(field.name(), field.value(), field.get(), field.required(), true));
    }

    /** The last field identifies the rows of a list. */
    public PartBuilder<T> key() {
        key = last.name();
        return this;
    }

    /** The last field is where a refusal to build the whole is shown. */
    public PartBuilder<T> blamed() {
        blamed = last.name();
        return this;
    }

    /** @param sentence doubts a new input; empty where it is plausible */
    public PartBuilder<T> doubted(Function<T, Optional<Message>> sentence) {
        doubt = sentence;
        return this;
    }

    /** @param read reads the text with which older programs stored the whole part */
    public PartBuilder<T> onceText(Function<String, T> read) {
        once = read;
        return this;
    }

    /**
     * @param build makes the Java record from the values; what it refuses with an {@link IllegalArgumentException} is a fault of
     *     the input
     */
    public Part<T> built(Function<Values, T> build) {
        return new Part<>(this, build);
    }
}
