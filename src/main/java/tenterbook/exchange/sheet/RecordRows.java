package tenterbook.exchange.sheet;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Editions;
import tenterbook.archive.NewIdentifier;
import tenterbook.archive.PieceCheck;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Part;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Piece;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** Rows that are a record each, found by identifier or, where a row has none, by name. */
final class RecordRows<T> extends RowJudge<T> {
    private final Part<T> part;
    private final Map<String, Integer> rows = new HashMap<>();
    /** Rows by the place in an edition that they give a piece. */
    private final Map<String, Integer> places = new HashMap<>();

    private final Map<String, Set<String>> byName = new HashMap<>();

    RecordRows(Archive archive, SheetKind sheet, Kind<T> kind, Part<T> part, ImportChoices choices) {
        super(archive, sheet, kind, choices);
        this.part = part;
        if (!sheet.naming().isEmpty()) {
            SheetColumn naming = sheet.column(sheet.naming()).orElseThrow();
            for (Saved<T> saved : archive.ledger().all(kind)) {
                String id = kind.id().apply(saved.record());
                called(RecordCells.text(naming, part.write(saved.record()))).add(id);
            }
        }
    }

    private Set<String> called(String name) {
        return byName.computeIfAbsent(name.strip().toLowerCase(Locale.ROOT), each -> new LinkedHashSet<>());
    }

    @Override
    JudgedRow<T> judge(int row, Map<String, String> texts) {
        String id = "";
        try {
            id = identifier(texts);
            Integer before = rows.putIfAbsent(id, row);
            if (before != null) {
                throw Refusal.of("import.row-twice", "id", id, "row", before);
            }
            return judge(row, id, texts);
        } catch (IllegalArgumentException e) {
            return JudgedRow.refused(row, id, sentence(e));
        }
    }

    private String identifier(Map<String, String> texts) {
        String typed = texts.get(sheet.identifying());
        if (typed != null) {
            return archive.ledger()
                    .find(kind, typed)
                    .map(saved -> kind.id().apply(saved.record()))
                    .orElse(typed);
        }
        String name = texts.getOrDefault(sheet.naming(), "");
        if (name.isEmpty()) {
            throw nothingIn(sheet.identifying());
        }
        Set<String> same = called(name);
        if (same.size() > 1) {
            throw Refusal.of(
                    "import.several-called", "count", same.size(), "name", name, "ids", String.join(", ", same));
        }
        return same.stream()
                .findFirst()
                .orElseGet(() -> NewIdentifier.of(name, sheet.toString(), start -> {
                    List<String> used = archive.ledger().idsEverUsed(kind, start);
                    return each -> rows.containsKey(each) || isInUse(used, each, name);
                }));
    }

    /** Of a withdrawn record the identifier is used again by a row of the same name, as after an undone import. */
    private boolean isInUse(List<String> used, String id, String name) {
        if (!used.contains(id)) {
            return false;
        }
        return archive.ledger().find(kind, id).isPresent()
                || archive.ledger()
                        .version(kind, id, withdrawnVersion(id))
                        .map(saved -> RecordCells.text(
                                sheet.column(sheet.naming()).orElseThrow(), part.write(saved.record())))
                        .filter(name::equalsIgnoreCase)
                        .isEmpty();
    }

    /** Adds what {@link PieceCheck} finds, and a fault where another row has its place in an edition. */
    private void check(@Nullable Piece before, Piece piece, int row, Faults faults) {
        if (before == null) {
            archive.ledger()
                    .holder(kind, piece.number().value())
                    .filter(holder -> !holder.equals(piece.number().value()))
                    .ifPresent(holder -> faults.add(
                            "number", Message.of("piece.number-taken", "number", piece.number(), "piece", holder)));
            PieceCheck.checkRecorded(new Editions(archive), null, piece, faults);
        } else {
            PieceCheck.check(new Editions(archive), before, piece, faults);
        }
        piece.placeInEdition()
                .filter(place ->
                        place.number() != null && !piece.inEdition().name().isEmpty())
                .map(place -> piece.inEdition().key() + '\n' + place.part() + '\n' + place.number())
                .map(place -> places.putIfAbsent(place, row))
                .ifPresent(other -> faults.add("edition", Message.of("edition.taken-in-row", "row", other)));
    }

    private JudgedRow<T> judge(int row, String id, Map<String, String> texts) {
        Optional<Saved<T>> saved = archive.ledger().find(kind, id);
        ObjectNode json = saved.map(each -> part.write(each.record())).orElseGet(JsonNodeFactory.instance::objectNode);
        Faults faults = new Faults();
        boolean other = put(texts, json, faults);
        if (saved.isPresent() && !other && faults.isEmpty()) {
            return JudgedRow.still(row, Verdict.UNCHANGED, id);
        }
        if (saved.isPresent() && !update) {
            return JudgedRow.still(row, Verdict.LEFT, id);
        }
        json.put(part.key(), id);
        T record = faults.isEmpty() ? understood(part, json, faults) : null;
        if (record == null) {
            return JudgedRow.refused(row, id, sentences(faults));
        }
        if (id.equals(NewIdentifier.RESERVED)) {
            return JudgedRow.refused(row, id, List.of(Message.of("import.reserved", "name", id)));
        }
        List<Written> missing = missing(record, saved.map(Saved::record).orElse(null));
        if (!missing.isEmpty()) {
            return JudgedRow.refused(row, id, missing);
        }
        if (saved.isPresent() && record.equals(saved.get().record())) {
            return JudgedRow.still(row, Verdict.UNCHANGED, id);
        }
        if (record instanceof Piece piece) {
            check(saved.map(each -> (Piece) each.record()).orElse(null), piece, row, faults);
            if (!faults.isEmpty()) {
                return JudgedRow.refused(row, id, sentences(faults));
            }
        }
        String name = sheet.naming();
        if (!name.isEmpty() && saved.isEmpty()) {
            called(texts.getOrDefault(name, "")).add(id);
        }
        return new JudgedRow<>(
                row,
                saved.isPresent() ? Verdict.UPDATED : Verdict.NEW,
                id,
                record,
                saved.map(Saved::version).orElseGet(() -> withdrawnVersion(id)),
                List.of());
    }
}
