package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * The description of a record, or of a part of one: its fields in order, and how it is built from them.
 *
 * @param <T> what it is in the program, an immutable Java record
 */
public final class Part<T> implements Value<T>, RecordCodec<T> {
    private final String name;
    private final Map<String, Field<T, ?>> fields;
    private final Map<String, Integer> places = new HashMap<>();
    private final Function<Values, T> build;
    private final String blamed;
    private final Function<T, Optional<Message>> doubt;
    private final String key;
    private final Function<String, T> once;

    private Part(Builder<T> builder, Function<Values, T> build) {
        this.name = builder.name;
        this.fields = new LinkedHashMap<>(builder.fields);
        fields.keySet().forEach(fieldName -> places.put(fieldName, places.size()));
        this.build = build;
        this.blamed = builder.blamed;
        this.doubt = builder.doubt;
        this.key = builder.key;
        this.once = builder.once;
    }

    /** @param name as in message keys and in OpenAPI, as in {@code piece} or {@code care-test} */
    public static <T> Builder<T> of(String name) {
        return new Builder<>(name);
    }

    public String name() {
        return name;
    }

    public List<Field<T, ?>> fields() {
        return List.copyOf(fields.values());
    }

    public Optional<Field<T, ?>> field(String fieldName) {
        return Optional.ofNullable(fields.get(fieldName));
    }

    @Override
    public ObjectNode write(T record) {
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        fields.values().forEach(field -> field.write(record, json));
        return json;
    }

    @Override
    public ObjectNode toJson(T record) {
        return write(record);
    }

    @Override
    public T read(JsonNode json, Faults faults, String at) {
        if (once != null && json.isTextual()) {
            return once.apply(json.textValue());
        }
        if (!(json instanceof ObjectNode stored)) {
            faults.add(at, Message.of("input.object", "found", brief(json)));
            return null;
        }
        Values values = new Values(places);
        int place = 0;
        for (Field<T, ?> field : fields.values()) {
            values.put(place++, field.read(stored, faults, at));
        }
        if (faults.within(at)) {
            return null;
        }
        try {
            return build.apply(values);
        } catch (IllegalArgumentException e) {
            faults.add(faults.inside(at, blamed), e);
            return null;
        }
    }

    @Override
    public T fromJson(ObjectNode json) {
        Faults unplaced = Faults.unplaced();
        T record = read(json, unplaced, "");
        if (unplaced.isEmpty()) {
            return record;
        }
        Faults faults = new Faults();
        read(json, faults, "");
        throw new Refusal(faults.inOneLine());
    }

    @Override
    public ObjectNode understood(JsonNode given, Reading reading, Faults faults, String at) {
        if (!(given instanceof ObjectNode object)) {
            faults.add(at, Message.of("input.object", "found", brief(given)));
            return null;
        }
        object.fieldNames().forEachRemaining(found -> {
            if (!fields.containsKey(found)) {
                faults.add(
                        faults.inside(at, found),
                        Message.of("input.no-field", "fields", String.join(", ", fields.keySet())));
            }
        });
        ObjectNode stored = JsonNodeFactory.instance.objectNode();
        for (Field<T, ?> field : fields.values()) {
            String inside = faults.inside(at, field.name());
            JsonNode json = object.get(field.name());
            JsonNode understood =
                    json == null || json.isNull() ? null : field.value().understood(json, reading, faults, inside);
            if (understood != null && !(understood.isContainerNode() && understood.isEmpty())) {
                stored.set(field.name(), understood);
            } else if (field.required() && !faults.within(inside)) {
                faults.add(inside, missing(field));
            }
        }
        doubted(stored, faults, at);
        return stored;
    }

    /** Whether the values, each fit by itself, make no sense together; never asked of what is stored. */
    private void doubted(ObjectNode stored, Faults faults, String at) {
        if (!faults.within(at)) {
            T built = read(stored, faults, at);
            if (built != null) {
                try {
                    doubt.apply(built).ifPresent(sentence -> faults.add(faults.inside(at, blamed), sentence));
                } catch (IllegalArgumentException e) {
                    faults.add(faults.inside(at, blamed), e);
                }
            }
        }
    }

    /** The sentence about a required field that is not there. */
    public Message missing(Field<T, ?> field) {
        return Message.of("input.missing", "field", field.name());
    }

    /** The name of the field beside which it is said that the whole cannot be. */
    public String blamed() {
        return blamed;
    }

    /** The field that tells the rows of a list apart; empty where none does. */
    public String key() {
        return key;
    }

    @Override
    public void carryUnknown(ObjectNode old, ObjectNode fresh) {
        UnknownFields.carry(this, old, fresh);
    }

    /**
     * Gives {@code fresh} fields of {@code old} that it lacks.
     *
     * @param names of fields, or of fields in the rows of a list with a key, as in {@code photos.regions}
     */
    public void keep(Set<String> names, ObjectNode old, ObjectNode fresh) {
        UnknownFields.keep(this, names, old, fresh);
    }

    /** The fields that tell of a person or of money, as in {@code events.*.price}; {@code *} alone where the key itself does. */
    public List<String> personal() {
        if (!key.isEmpty() && fields.get(key).privacy()) {
            return List.of("*");
        }
        List<String> paths = new ArrayList<>();
        fields.values().forEach(field -> {
            if (field.privacy()) {
                paths.add(field.name());
            } else if (field.value() instanceof Part<?> inner) {
                inner.personal().forEach(path -> paths.add(field.name() + "." + path));
            } else if (field.value() instanceof ListOf<?> list && list.element() instanceof Part<?> row) {
                row.personal().forEach(path -> paths.add(field.name() + ".*." + path));
            }
        });
        return paths;
    }

    static String brief(JsonNode json) {
        String text = json.toString();
        return text.length() > 60 ? text.substring(0, 60) + "…" : text;
    }

    @Override
    public ObjectNode schema() {
        ObjectNode schema = JsonNodeFactory.instance.objectNode();
        schema.put("type", "object").put("additionalProperties", false);
        ObjectNode properties = schema.putObject("properties");
        List<String> required = new ArrayList<>();
        for (Field<T, ?> field : fields.values()) {
            properties.set(field.name(), Schemas.reference(field.value()));
            if (field.required() && !field.name().equals(key)) {
                required.add(field.name());
            }
        }
        if (!required.isEmpty()) {
            required.forEach(schema.putArray("required")::add);
        }
        return schema;
    }

    /** A description in the making: fields in the order in which they are shown and stored. */
    public static final class Builder<T> {
        private final String name;
        private final Map<String, Field<T, ?>> fields = new LinkedHashMap<>();
        private Field<T, ?> last;
        private String blamed = "";
        private String key = "";
        private Function<T, Optional<Message>> doubt = record -> Optional.empty();
        private Function<String, T> once;

        private Builder(String name) {
            this.name = name;
        }

        public <V> Builder<T> field(String fieldName, Value<V> value, Function<T, V> get) {
            return put(new Field<>(fieldName, value, get));
        }

        private <V> Builder<T> put(Field<T, V> field) {
            if (fields.put(field.name(), field) != null
                    && last != null
                    && !field.name().equals(last.name())) {
                throw new IllegalStateException("%s: the field “%s” stands twice".formatted(name, field.name()));
            }
            last = field;
            return this;
        }

        public Builder<T> text(String fieldName, Function<T, String> get) {
            return field(fieldName, Plain.TEXT, get);
        }

        public <E> Builder<T> list(String fieldName, Value<E> element, Function<T, List<E>> get) {
            return field(fieldName, new ListOf<>(element), get);
        }

        public <E extends Enum<E>> Builder<T> choice(String fieldName, Codes<E> codes, Function<T, E> get) {
            return field(fieldName, new Choice<>(codes), get);
        }

        /** The field just named is refused where it is left out of a new input. */
        public Builder<T> required() {
            return required(last);
        }

        private <V> Builder<T> required(Field<T, V> field) {
            return put(new Field<>(field.name(), field.value(), field.get(), true, field.privacy()));
        }

        /** The field just named tells of a person or of money. */
        public Builder<T> personal() {
            return personal(last);
        }

        private <V> Builder<T> personal(Field<T, V> field) {
            return put(new Field<>(field.name(), field.value(), field.get(), field.required(), true));
        }

        /** The field just named tells the rows of a list apart. */
        public Builder<T> key() {
            key = last.name();
            return this;
        }

        /** The field just named is where it is said that the whole cannot be built. */
        public Builder<T> blamed() {
            blamed = last.name();
            return this;
        }

        /** @param sentence what makes no sense about a new input; empty where it does */
        public Builder<T> doubted(Function<T, Optional<Message>> sentence) {
            doubt = sentence;
            return this;
        }

        /** @param read reads the text as which older programs stored the whole part */
        public Builder<T> onceText(Function<String, T> read) {
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
}
