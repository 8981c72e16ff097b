package tenterbook.ledger.revision;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Converts the records of one kind to stored JSON and back. Thread-safe. */
public interface RecordCodec<T> {
    /** Fields without a value are left out. */
    ObjectNode toJson(T record);

    /**
     * Unknown fields are ignored.
     *
     * @throws IllegalArgumentException with a sentence, if it is not a record of this kind
     */
    T fromJson(ObjectNode json);

    /** Copies unknown fields of {@code old} to {@code fresh}, also in parts and rows. */
    default void carryUnknown(ObjectNode old, ObjectNode fresh) {}

    /** As {@link #fromJson}, from text. */
    default T fromText(String text) {
        return fromJson(parsed(text));
    }

    /** @throws IllegalArgumentException with a sentence, if the text is not a JSON object */
    static ObjectNode parsed(String text) {
        try {
            JsonNode json = Parser.JSON.readTree(text);
            if (json instanceof ObjectNode object) {
                return object;
            }
            throw Refusal.of(
                    "ledger.json.object", "found", json.getNodeType().name().toLowerCase(Locale.ROOT));
        } catch (StreamConstraintsException e) {
            throw new Refusal(Message.of("ledger.json.limits"), e);
        } catch (MismatchedInputException e) {
            // A duplicate field, or text after the end.
            JsonLocation place = e.getLocation();
            throw new Refusal(
                    Message.of("ledger.json.once", "line", place.getLineNr(), "column", place.getColumnNr()), e);
        } catch (JsonProcessingException e) {
            JsonLocation place = e.getLocation();
            throw new Refusal(
                    Message.of("ledger.json.unreadable", "line", place.getLineNr(), "column", place.getColumnNr()), e);
        }
    }

    /** A class of its own, since constants of an interface are public. */
    final class Parser {
        private static final JsonMapper JSON = JsonMapper.builder()
                .enable(
                        DeserializationFeature.FAIL_ON_TRAILING_TOKENS,
                        DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
                .build();

        private Parser() {}
    }
}
