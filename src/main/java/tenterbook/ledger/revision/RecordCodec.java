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

/** How the records of one kind become JSON, as it is stored, and back. Safe for many threads. */
public interface RecordCodec<T> {
    /** What nobody entered is left out. */
    ObjectNode toJson(T record);

    /**
     * Fields that the record does not have are passed over.
     *
     * @throws IllegalArgumentException with a sentence, where it is no record of this kind
     */
    T fromJson(ObjectNode json);

    /** Gives {@code fresh} those fields of {@code old} that this program does not know, in its parts and rows too. */
    default void carryUnknown(ObjectNode old, ObjectNode fresh) {}

    /** As {@link #fromJson}, from text. */
    default T fromText(String text) {
        return fromJson(parsed(text));
    }

    /** @throws IllegalArgumentException with a sentence, where the text is no JSON object */
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
            // A field twice in one object, or something behind the end of it.
            JsonLocation place = e.getLocation();
            throw new Refusal(
                    Message.of("ledger.json.once", "line", place.getLineNr(), "column", place.getColumnNr()), e);
        } catch (JsonProcessingException e) {
            JsonLocation place = e.getLocation();
            throw new Refusal(
                    Message.of("ledger.json.unreadable", "line", place.getLineNr(), "column", place.getColumnNr()), e);
        }
    }

    /** Kept apart, so that an interface holds no public constant. */
    final class Parser {
        private static final JsonMapper JSON = JsonMapper.builder()
                .enable(
                        DeserializationFeature.FAIL_ON_TRAILING_TOKENS,
                        DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
                .build();

        private Parser() {}
    }
}
