package tenterbook.exchange.sheet;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.field.Faults;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StoredCodes;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;
import tenterbook.piece.history.Act;
import tenterbook.words.Message;

/**
 * Rows that are an event of a piece each. A row that says no more than an event that is recorded changes nothing; one that adds to
 * an event of the same kind and day fills in what that lacks; any other is a further event, with what follows from it.
 */
final class SaleRows extends PieceRows {
    SaleRows(Archive archive, ImportChoices choices) {
        super(archive, SheetKind.SALES, choices);
    }

    @Override
    JudgedRow<Piece> judge(int row, Piece piece, int version, Map<String, String> given) {
        Map<String, String> texts = new HashMap<>(given);
        texts.putIfAbsent("kind", StoredCodes.EVENT_KIND.code(EventKind.SOLD));
        String id = piece.number().value();
        Faults faults = new Faults();
        ObjectNode json = JsonNodeFactory.instance.objectNode();
        put(texts, json, faults);
        for (Event event : piece.events()) {
            if (!put(texts, PieceRecord.EVENT.write(event), new Faults())) {
                return JudgedRow.still(row, Verdict.UNCHANGED, id);
            }
        }
        Event event = faults.isEmpty() ? understood(PieceRecord.EVENT, json, faults) : null;
        if (event == null) {
            return JudgedRow.refused(row, id, sentences(faults));
        }
        for (int i = 0; i < piece.events().size(); i++) {
            ObjectNode recorded = PieceRecord.EVENT.write(piece.events().get(i));
            if (adds(texts, recorded, event, piece.events().get(i))) {
                return update ? complemented(row, piece, version, i, texts) : JudgedRow.still(row, Verdict.LEFT, id);
            }
        }
        return added(row, piece, version, event);
    }

    /** Whether the recorded event has the same kind and day, and nothing that contradicts the row. */
    private boolean adds(Map<String, String> texts, ObjectNode recorded, Event event, Event other) {
        if (event.kind() != other.kind()
                || !event.when().known()
                || !event.when().equals(other.when())) {
            return false;
        }
        Map<String, String> given = new HashMap<>(texts);
        given.keySet()
                .removeIf(path -> RecordCells.text(sheet.column(path).orElseThrow(), recorded)
                        .isEmpty());
        return !put(given, recorded.deepCopy(), new Faults());
    }

    private JudgedRow<Piece> complemented(int row, Piece piece, int version, int at, Map<String, String> texts) {
        String id = piece.number().value();
        Faults faults = new Faults();
        ObjectNode json = PieceRecord.EVENT.write(piece.events().get(at));
        put(texts, json, faults);
        Event event = understood(PieceRecord.EVENT, json, faults);
        if (event == null) {
            return JudgedRow.refused(row, id, sentences(faults));
        }
        List<Event> events = new java.util.ArrayList<>(piece.events());
        events.set(at, event);
        Piece after = piece.withEvents(events, piece.status(), piece.holder(), piece.place(), piece.price());
        return judged(row, piece, after, version);
    }

    private JudgedRow<Piece> added(int row, Piece piece, int version, Event event) {
        Optional<Message> refusal = Act.refusal(piece, event);
        if (refusal.isPresent()) {
            return JudgedRow.refused(row, piece.number().value(), List.of(refusal.get()));
        }
        return judged(row, piece, Act.after(piece, event), version);
    }
}
