package tenterbook.archive.field;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Currency;
import java.util.Locale;
import java.util.function.Function;
import tenterbook.measure.Digest;
import tenterbook.measure.Identifier;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * A value that is stored as a JSON text: words, names of records, digests, instants.
 *
 * @param pattern of the text as JSON Schema's {@code format} or {@code pattern}; empty for any text
 * @param write its text
 * @param parse reads it; refuses with an {@link IllegalArgumentException}
 */
public record Plain<V>(String pattern, Function<V, String> write, Function<String, V> parse) implements Written<V> {
    /** Free text. */
    public static final Plain<String> TEXT = new Plain<>("", Function.identity(), Function.identity());

    public static final Plain<Digest> DIGEST = new Plain<>("^[0-9a-f]{64}$", Digest::hex, Digest::new);

    /** An instant, UTC. */
    public static final Plain<Instant> INSTANT =
            new Plain<>("date-time", Instant::toString, text -> time(text, Instant::parse, "2024-03-05T10:15:00Z"));

    private static final Plain<LocalDateTime> LOCAL_TIME = new Plain<>(
            "",
            DateTimeFormatter.ISO_LOCAL_DATE_TIME::format,
            text -> time(text, LocalDateTime::parse, "2024-03-05T10:15"));

    /** Local day and time; stored with seconds, written without where they are 0. */
    public static final Entered<LocalDateTime> WALL_CLOCK =
            new Entered<>(LOCAL_TIME, LOCAL_TIME::parse, (time, lengths) -> time.toString());

    /** A day, ISO 8601. */
    public static final Plain<LocalDate> DAY = new Plain<>("date", LocalDate::toString, Plain::day);

    /** ISO 4217. */
    public static final Plain<Currency> CURRENCY =
            new Plain<>("^[A-Z]{3}$", Currency::getCurrencyCode, Plain::currency);

    /** A zone of the IANA time zone database, as in 'Europe/Lisbon'. */
    public static final Plain<ZoneId> TIME_ZONE = new Plain<>("", ZoneId::getId, Plain::timeZone);

    /** The name of a record of some kind. */
    public static <I extends Identifier> Plain<I> identifier(Function<String, I> maker) {
        return new Plain<>("^[\\p{L}\\p{N}][\\p{L}\\p{N}._-]{0,39}$", Identifier::value, maker);
    }

    private static <V> V time(String text, Function<CharSequence, V> reader, String example) {
        try {
            return reader.apply(text);
        } catch (DateTimeException e) {
            throw new Refusal(Message.of("input.no-time", "found", text, "example", example), e);
        }
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new Refusal(Message.of("input.no-day", "found", text), e);
        }
    }

    private static ZoneId timeZone(String name) {
        try {
            return ZoneId.of(name.strip());
        } catch (DateTimeException e) {
            throw new Refusal(Message.of("input.no-time-zone", "found", name), e);
        }
    }

    private static Currency currency(String code) {
        try {
            return Currency.getInstance(code.toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            throw new Refusal(Message.of("input.no-currency", "found", code), e);
        }
    }

    @Override
    public JsonNode write(V value) {
        String text = write.apply(value);
        return text.isEmpty() ? null : TextNode.valueOf(text);
    }

    @Override
    public V read(JsonNode json, Faults faults, String at) {
        if (!json.isTextual()) {
            faults.add(at, Message.of("input.text", "found", Part.brief(json)));
            return null;
        }
        try {
            return parse.apply(json.textValue());
        } catch (IllegalArgumentException e) {
            faults.add(at, e);
            return null;
        }
    }

    @Override
    public V parse(String text, Reading reading) {
        return parse.apply(text);
    }

    @Override
    public String text(V value) {
        return write.apply(value);
    }

    @Override
    public ObjectNode schema() {
        ObjectNode schema = JsonNodeFactory.instance.objectNode();
        schema.put("type", "string");
        if (!pattern.isEmpty()) {
            schema.put(pattern.startsWith("^") ? "pattern" : "format", pattern);
        }
        return schema;
    }
}
