package tenterbook.archive.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Reading;
import tenterbook.ledger.revision.Kind;
import tenterbook.measure.LengthUnits;

/** The descriptions against every record of the sample studio, as format 1 of the ledger stored them. */
class SampleLedgerTest {
    private static final Path LEDGER = Path.of("src/test/resources/golden/ledger-format-1.jsonl");
    private static final Reading EURO = new Reading(java.util.Currency.getInstance("EUR"), LengthUnits.CM_AND_MM);

    private static List<JsonNode> revisions() throws IOException {
        List<JsonNode> all = new ArrayList<>();
        for (String line : Files.readAllLines(LEDGER)) {
            all.add(new ObjectMapper().readTree(line));
        }
        return all;
    }

    private static Kind<?> kind(JsonNode revision) {
        return Kinds.ALL.stream()
                .filter(kind -> kind.name().equals(revision.get("kind").textValue()))
                .findFirst()
                .orElseThrow();
    }

    /** What older programs stored although nobody had entered it. */
    private static JsonNode withoutWhatNobodyEntered(JsonNode node) {
        if (node instanceof ObjectNode object) {
            List<String> gone = new ArrayList<>();
            object.properties().forEach(field -> {
                withoutWhatNobodyEntered(field.getValue());
                boolean invented = switch (field.getKey()) {
                    case "basis" -> field.getValue().asText().equals("unknown");
                    case "about", "all" ->
                        field.getValue().isBoolean() && !field.getValue().booleanValue();
                    default -> field.getValue().asText().equals("not said");
                };
                if (invented) {
                    gone.add(field.getKey());
                }
            });
            object.remove(gone);
        } else {
            node.forEach(SampleLedgerTest::withoutWhatNobodyEntered);
        }
        return node;
    }

    @Test
    void everyRecordOfTheFirstFormatComesBackWithAllThatWasEntered() throws IOException {
        Set<String> kinds = new HashSet<>();
        for (JsonNode revision : revisions()) {
            Kind<?> kind = kind(revision);
            if (kind.codec() instanceof Part<?> part) {
                kinds.add(kind.name());
                ObjectNode stored = (ObjectNode)
                        new ObjectMapper().readTree(revision.get("record").textValue());
                assertThat(numbersAlike(again(part, stored)))
                        .as("revision %s", revision.get("sequence"))
                        .isEqualTo(numbersAlike(withoutWhatNobodyEntered(stored)));
            }
        }
        assertThat(kinds)
                .contains(
                        "studio",
                        "board-pair",
                        "cloth",
                        "lot",
                        "party",
                        "photo",
                        "clamping",
                        "piece",
                        "calibration",
                        "examination",
                        "issued-paper");
    }

    /** So that 3 and 3.0, which JSON does not tell apart, are equal. */
    private static JsonNode numbersAlike(JsonNode node) throws IOException {
        return new ObjectMapper().readTree(tenterbook.ledger.revision.Canonical.json(node));
    }

    private static <T> ObjectNode again(Part<T> part, ObjectNode stored) {
        return part.toJson(part.fromJson(stored));
    }

    @Test
    void whatIsStoredIsUnderstoodWhenAnotherProgramSendsIt() throws IOException {
        int understood = 0;
        for (JsonNode revision : revisions()) {
            if (kind(revision).codec() instanceof Part<?> part) {
                ObjectNode stored = (ObjectNode)
                        new ObjectMapper().readTree(revision.get("record").textValue());
                Faults faults = new Faults();
                ObjectNode once = part.understood(stored, EURO, faults, "");
                assertThat(faults.all())
                        .as("revision %s", revision.get("sequence"))
                        .isEmpty();
                assertThat(numbersAlike(once)).isEqualTo(numbersAlike(again(part, stored)));
                understood++;
            }
        }
        assertThat(understood).isGreaterThan(100);
    }
}
