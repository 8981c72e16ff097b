package tenterbook.web.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.Function;
import tenterbook.archive.RecordJson;
import tenterbook.measure.DateText;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.piece.condition.Examination;

/**
 * An examination as another program writes it: as the ledger keeps it, or with dates and quantities in plain text, as in {@code
 * "extent": "about 8 mm"}. A field that no examination has is refused, so that nothing sent is lost unseen.
 */
final class ExaminationJson {
    private static final ObjectMapper STRICT = RecordJson.mapper()
            .enable(
                    DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES,
                    DeserializationFeature.FAIL_ON_TRAILING_TOKENS,
                    DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY);

    private ExaminationJson() {}

    /** @throws IllegalArgumentException with a sentence, where it is no JSON object or a text cannot be understood */
    static ObjectNode parsed(String body) {
        try {
            JsonNode json = STRICT.readTree(body);
            if (!(json instanceof ObjectNode object)) {
                throw new IllegalArgumentException(
                        "An examination is a JSON object, as in {\"when\": \"2024-03-14\", \"observations\": []}; found something else. Nothing was changed.");
            }
            asText(object, "when", DateText::read);
            asText(object, "length", text -> QuantityText.read(text, Unit.CENTIMETRE));
            asText(object, "width", text -> QuantityText.read(text, Unit.CENTIMETRE));
            object.path("observations").forEach(row -> {
                asText(row, "extent", text -> QuantityText.read(text, Unit.MILLIMETRE));
                asText(row, "across", text -> QuantityText.read(text, Unit.MILLIMETRE));
            });
            List.of("handedOver", "received").forEach(hand -> asText(object.path(hand), "when", DateText::read));
            return object;
        } catch (JsonProcessingException e) {
            throw NotUnderstood.because("examination", e);
        }
    }

    private static void asText(JsonNode node, String field, Function<String, Object> reader) {
        if (node instanceof ObjectNode object && object.path(field).isTextual()) {
            try {
                object.set(
                        field, STRICT.valueToTree(reader.apply(object.get(field).textValue())));
            } catch (IllegalArgumentException e) {
                throw refusal(field, "could not be read: " + e.getMessage());
            }
        }
    }

    static Examination examination(ObjectNode object) {
        try {
            Examination examination = STRICT.treeToValue(object, Examination.class);
            date("when", examination.when());
            date("handedOver.when", examination.handedOver().when());
            date("received.when", examination.received().when());
            length("length", examination.length(), Unit.CENTIMETRE);
            length("width", examination.width(), Unit.CENTIMETRE);
            examination.observations().forEach(seen -> {
                length("observations.extent", seen.extent(), Unit.MILLIMETRE);
                length("observations.across", seen.across(), Unit.MILLIMETRE);
            });
            return examination;
        } catch (JsonProcessingException e) {
            throw NotUnderstood.because("examination", e);
        }
    }

    /** What was entered and the days beside it must say the same. */
    private static void date(String field, PartialDate found) {
        if (found.recorded() && !found.equals(DateText.read(found.entered()))) {
            throw refusal(field, "was entered as “%s”, which its days do not say".formatted(found.entered()));
        }
    }

    private static void length(String field, Quantity found, Unit usual) {
        if (found.known() && found.unit().dimension() != usual.dimension()) {
            throw refusal(field, "is a length and is not given in " + found.unit());
        }
        if (found.low() != null && found.low() < 0 || found.high() != null && found.high() < 0) {
            throw refusal(field, "is below nothing");
        }
        if (!found.entered().isBlank()) {
            Quantity read = QuantityText.read(found.entered(), found.known() ? found.unit() : usual);
            if (!java.util.Objects.equals(read.low(), found.low())
                    || !java.util.Objects.equals(read.high(), found.high())
                    || read.unit() != found.unit()) {
                throw refusal(field, "was entered as “%s”, which its numbers do not say".formatted(found.entered()));
            }
        }
    }

    private static IllegalArgumentException refusal(String field, String why) {
        return new IllegalArgumentException("The examination was not understood: ‘%s’ %s Nothing was changed."
                .formatted(field, why.endsWith(".") ? why : why + "."));
    }
}
