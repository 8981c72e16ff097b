package tenterbook.web.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Currency;
import java.util.function.Function;
import tenterbook.archive.RecordJson;
import tenterbook.measure.DateText;
import tenterbook.measure.Money;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.piece.Layers;
import tenterbook.piece.Piece;

/**
 * A piece as another program writes it: as the ledger keeps it, or with quantities, dates, layers and prices in plain text,
 * as in {@code "length": "180 cm"}. A field that no piece has is refused, so that nothing sent is lost unseen.
 */
final class PieceJson {
    private static final ObjectMapper STRICT = RecordJson.mapper()
            .enable(
                    DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES,
                    DeserializationFeature.FAIL_ON_TRAILING_TOKENS,
                    DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY);

    private PieceJson() {}

    /**
     * @param usual the currency meant where a price names none
     * @throws IllegalArgumentException with a sentence, where it is no JSON object or a text cannot be understood
     */
    static ObjectNode parsed(String body, Currency usual) {
        try {
            JsonNode json = STRICT.readTree(body);
            if (!(json instanceof ObjectNode object)) {
                throw new IllegalArgumentException(
                        "A piece is a JSON object, as in {\"title\": \"Maré\", \"length\": \"180 cm\"}; found something else. Nothing was changed.");
            }
            asText(object, "length", text -> QuantityText.read(text, Unit.CENTIMETRE));
            asText(object, "width", text -> QuantityText.read(text, Unit.CENTIMETRE));
            asText(object, "mass", text -> QuantityText.read(text, Unit.GRAM));
            asText(object, "finished", DateText::read);
            asText(object, "price", text -> Money.read(text, usual));
            object.path("made").forEach(row -> asText(row, "layers", Layers::read));
            object.path("tests").forEach(row -> {
                asText(row, "when", DateText::read);
                asText(row, "temperature", text -> QuantityText.read(text, Unit.CELSIUS));
            });
            object.path("events").forEach(row -> {
                asText(row, "when", DateText::read);
                asText(row, "until", DateText::read);
                asText(row, "price", text -> Money.read(text, usual));
            });
            return object;
        } catch (JsonProcessingException e) {
            throw NotUnderstood.because(e);
        }
    }

    private static void asText(JsonNode node, String field, Function<String, Object> reader) {
        if (node instanceof ObjectNode object && object.path(field).isTextual()) {
            object.set(field, STRICT.valueToTree(reader.apply(object.get(field).textValue())));
        }
    }

    static Piece piece(ObjectNode object) {
        try {
            Piece piece = STRICT.treeToValue(object, Piece.class);
            PieceSense.check(piece);
            return piece;
        } catch (JsonProcessingException e) {
            throw NotUnderstood.because(e);
        }
    }
}
