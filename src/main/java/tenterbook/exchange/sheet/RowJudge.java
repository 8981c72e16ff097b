package tenterbook.exchange.sheet;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Reading;
import tenterbook.archive.field.TextCharacters;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** Says of each row what an import makes of it. Rows are given in order; not for several threads. */
abstract class RowJudge<T> {
    final Archive archive;
    final SheetKind sheet;
    final Kind<T> kind;
    final NewPeople people;
    /** Whether records that are there already are changed. */
    final boolean update;

    private final TypedWords words;
    private final Reading reading;

    RowJudge(Archive archive, SheetKind sheet, Kind<T> kind, ImportChoices choices) {
        this.archive = archive;
        this.sheet = sheet;
        this.kind = kind;
        this.update = choices.update();
        this.people = new NewPeople(archive, choices);
        this.words = new TypedWords(archive, people);
        this.reading = Reading.of(archive.studio());
    }

    /** @param texts by field, as typed; never blank */
    abstract JudgedRow<T> judge(int row, Map<String, String> texts);

    /** What was judged so far is in the ledger. */
    void written() {}

    /**
     * Puts the texts of a row into a record.
     *
     * @return whether that makes another of it
     */
    final boolean put(Map<String, String> texts, ObjectNode json, Faults faults) {
        boolean other = false;
        ObjectNode before = json.deepCopy();
        for (Map.Entry<String, String> each : texts.entrySet()) {
            SheetColumn column = sheet.column(each.getKey()).orElseThrow();
            String recorded = RecordCells.text(column, before);
            if (!RecordCells.same(recorded, each.getValue())) {
                try {
                    JsonNode value = column.value()
                            .fromText(words.recorded(column, each.getValue()), reading, faults, column.path());
                    if (value != null && !value.equals(RecordCells.at(before, column.path()))) {
                        RecordCells.put(json, column.path(), value);
                        other = true;
                    }
                } catch (Refusal e) {
                    faults.add(each.getKey(), e.explanation());
                }
            }
        }
        RecordCells.withoutEmptyRows(json);
        return other;
    }

    /** The record that a form with these fields makes; null where that has faults. */
    final <R> @Nullable R understood(Part<R> part, ObjectNode json, Faults faults) {
        TextCharacters.check(json, faults, "");
        ObjectNode stored = part.understood(json, reading, faults, "");
        return faults.isEmpty() ? part.read(stored, faults, "") : null;
    }

    /** A fault for each record that is named and is not there. */
    final List<Written> missing(T record, @Nullable T before) {
        Set<RecordKey> known =
                before == null ? Set.of() : new HashSet<>(kind.references().apply(before));
        List<Written> missing = new ArrayList<>();
        for (RecordKey key : kind.references().apply(record)) {
            if (!known.contains(key) && !people.has(key)) {
                Kinds.ALL.stream()
                        .filter(each -> each.name().equals(key.kind()))
                        .filter(each -> archive.ledger().find(each, key.id()).isEmpty())
                        .forEach(each ->
                                missing.add(Message.of("import.names-nothing", "kind", each.called(), "id", key.id())));
            }
        }
        return missing;
    }

    /** The newest version of a record that was withdrawn; 0 where there never was one. */
    final int withdrawnVersion(String id) {
        List<Revision> history = archive.ledger().history(kind.key(id));
        return history.isEmpty() ? 0 : history.get(history.size() - 1).version();
    }

    /** Each fault with the label of its column. */
    final List<Written> sentences(Faults faults) {
        List<Written> sentences = new ArrayList<>();
        faults.all()
                .forEach((at, sentence) -> sentences.add(sheet.columns().stream()
                        .filter(column -> at.equals(column.path()) || at.startsWith(column.path() + "."))
                        .findFirst()
                        .<Written>map(column ->
                                Message.of("import.column-fault", "column", column.label(), "sentence", sentence))
                        .orElse(sentence)));
        return sentences;
    }

    /** Where a row lacks what says of which record it is. */
    final Refusal nothingIn(String path) {
        return Refusal.of(
                "import.no-identifier",
                "field",
                sheet.column(path).orElseThrow().label());
    }

    static List<Written> sentence(IllegalArgumentException refusal) {
        return List.of(Explained.of(refusal));
    }
}
