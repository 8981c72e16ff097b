package tenterbook.archive.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.MappedCodec;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Event;
import tenterbook.piece.Piece;
import tenterbook.recipe.Clamping;

/** Fields that a newer program wrote survive every edit by this one. */
class UnknownFieldsTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String NEWER = """
            {"number": "V24-001", "title": "Figueira", "dyePlantPhotograph": {"digest": "ab"},
             "price": {"amount": "180.00", "currency": "EUR", "taxRate": "23"},
             "faults": [{"kind": "leak", "where": "beak", "severity": 3}, {"kind": "bleed", "where": "edge"}],
             "events": [{"kind": "washed", "note": "cold", "litres": 4}, {"kind": "shown", "note": "in the window", "lux": 50},
                        {"kind": "mended", "note": "hem"}]}""";

    @TempDir
    Path folder;

    /** Writes the text as it is, as a newer program would. */
    private static Kind<ObjectNode> raw(Kind<?> kind, String id) {
        return new Kind<>(
                kind.name(),
                kind.called(),
                new MappedCodec<>(JSON, ObjectNode.class),
                node -> node.get(id).textValue(),
                node -> List.of());
    }

    private static JsonNode stored(Archive archive) throws Exception {
        var history = archive.ledger().history(Kinds.PIECE.key("V24-001"));
        return JSON.readTree(history.get(history.size() - 1).json());
    }

    private static Piece with(Piece old, List<Event> events) {
        return new Piece(
                old.number(),
                "Noite",
                old.otherTitle(),
                old.category(),
                old.length(),
                old.width(),
                old.mass(),
                old.finished(),
                old.edition(),
                old.made(),
                old.status(),
                old.holder(),
                old.place(),
                old.price(),
                old.trims(),
                old.photos(),
                old.faults(),
                old.tests(),
                events,
                old.notes(),
                null);
    }

    @Test
    void theyStayInTheRecordInItsPartsAndInMovedAndChangedRows() throws Exception {
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            archive.ledger().write("newer", act -> act.create(raw(Kinds.PIECE, "number"), (ObjectNode) tree(NEWER)));
            Saved<Piece> saved = archive.ledger().find(Kinds.PIECE, "V24-001").orElseThrow();
            List<Event> events = saved.record().events();
            Event shown = events.get(1);
            Event changed = new Event(shown.kind(), shown.when(), shown.until(), null, null, "in the hall", "", false);
            Piece edited = with(saved.record(), List.of(changed, events.get(2), events.get(0)));

            archive.ledger().write("this", act -> act.save(Kinds.PIECE, edited, saved.version(), ""));

            JsonNode after = stored(archive);
            assertThat(after.at("/dyePlantPhotograph/digest").textValue()).isEqualTo("ab");
            assertThat(after.at("/price/taxRate").textValue()).isEqualTo("23");
            assertThat(after.at("/faults/0/severity").intValue()).isEqualTo(3);
            assertThat(after.at("/events/0/lux").intValue()).isEqualTo(50);
            assertThat(after.at("/events/0/note").textValue()).isEqualTo("in the hall");
            assertThat(after.at("/events/1").has("litres")).isFalse();
            assertThat(after.at("/events/2/litres").intValue()).isEqualTo(4);
            assertThat(after.at("/title").textValue()).isEqualTo("Noite");
            assertThat(archive.ledger().check().run(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void undoBringsBackThoseOfTheOlderVersion() throws Exception {
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            archive.ledger().write("newer", act -> act.create(raw(Kinds.PIECE, "number"), (ObjectNode) tree(NEWER)));
            archive.ledger().write("newer", act -> {
                ObjectNode without = (ObjectNode) tree("{\"number\": \"V24-001\", \"title\": \"Other\"}");
                return act.save(raw(Kinds.PIECE, "number"), without, 1, "");
            });
            var first = archive.ledger().history(Kinds.PIECE.key("V24-001")).get(0);
            Piece older = archive.ledger().saved(Kinds.PIECE, first).record();

            archive.ledger().write("this", act -> act.save(Kinds.PIECE, older, first.json(), 2, "Brought back"));

            assertThat(stored(archive)).isEqualTo(tree(tenterbook.ledger.revision.Canonical.json(NEWER)));
        }
    }

    @Test
    void savingWithoutAChangeWritesNothingAlsoOverWhatAnOlderProgramWrote() throws Exception {
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            String old = """
                    {"id": "C24-001", "when": {"entered": "2024", "from": "2024-01-01", "to": "2024-12-31", "about": false},
                     "steps": [{"kind": "dips", "newer": true, "dips": {"count":
                        {"entered": "6", "low": 6, "high": 6, "unit": "count", "basis": "unknown", "about": false}}}]}""";
            archive.ledger().write("old", act -> act.create(raw(Kinds.CLAMPING, "id"), (ObjectNode) tree(old)));
            Clamping clamping = archive.clamping("C24-001").orElseThrow();

            Saved<Clamping> again = archive.ledger().write("this", act -> act.save(Kinds.CLAMPING, clamping, 1, ""));

            assertThat(again.version()).isEqualTo(1);
            assertThat(archive.ledger().lastSequence()).isEqualTo(1);
        }
    }

    @Test
    void aListWithoutAKeyFindsItsRowsByWhatTheyStillShare() {
        ObjectNode old = (ObjectNode) tree(NEWER);
        ObjectNode fresh = (ObjectNode) tree("""
                {"number": "V24-001", "faults": [{"kind": "bleed", "where": "edge"}, {"kind": "leak", "where": "wing"}]}""");
        PieceRecord.PIECE.carryUnknown(old, fresh);
        assertThat(fresh.at("/faults/1/severity").intValue()).isEqualTo(3);
        assertThat(fresh.at("/faults/0").has("severity")).isFalse();
    }

    @Test
    void whatAFormDoesNotShowIsKeptByTheKeyOfItsRow() {
        String front = "a".repeat(64);
        String back = "b".repeat(64);
        ObjectNode old = (ObjectNode) tree("""
                {"photos": [{"photo": "%s", "regions": [{"name": "blue"}]}, {"photo": "%s"}]}""".formatted(front, back));
        ObjectNode fresh =
                (ObjectNode) tree("{\"photos\": [{\"photo\": \"%s\"}, {\"photo\": \"%s\"}]}".formatted(back, front));
        PieceRecord.PIECE.keep(Set.of("photos.regions"), old, fresh);
        assertThat(fresh.at("/photos/1/regions/0/name").textValue()).isEqualTo("blue");
        assertThat(fresh.at("/photos/0").has("regions")).isFalse();
    }

    private static JsonNode tree(String json) {
        try {
            return JSON.readTree(json);
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
