package tenterbook.exchange.sheet;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Ahead;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Faults;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/** Rows that are something of a piece each; several of one piece build on each other. */
abstract class PieceRows extends RowJudge<Piece> {
    private final Map<String, JudgedRow<Piece>> pending = new HashMap<>();

    PieceRows(Archive archive, SheetKind sheet, ImportChoices choices) {
        super(archive, sheet, Kinds.PIECE, choices);
    }

    @Override
    final void written() {
        pending.clear();
    }

    @Override
    final JudgedRow<Piece> judge(int row, Map<String, String> texts) {
        String id = texts.getOrDefault(SheetKind.PIECE, "");
        try {
            if (id.isEmpty()) {
                throw nothingIn(SheetKind.PIECE);
            }
            Saved<Piece> saved = archive.ledger()
                    .find(Kinds.PIECE, id)
                    .orElseThrow(() -> Refusal.of("import.names-nothing", "kind", Kinds.PIECE.called(), "id", id));
            String first = saved.record().number().value();
            JudgedRow<Piece> earlier = pending.get(first);
            Map<String, String> others = new LinkedHashMap<>(texts);
            others.remove(SheetKind.PIECE);
            Piece piece = earlier == null ? saved.record() : earlier.record();
            JudgedRow<Piece> judged = judge(row, piece, saved.version(), others);
            if (judged.writes()) {
                pending.put(first, judged);
            }
            return judged;
        } catch (IllegalArgumentException e) {
            return JudgedRow.refused(row, id, sentence(e));
        }
    }

    /**
     * @param piece as the rows before leave it
     * @param texts of the other columns
     */
    abstract JudgedRow<Piece> judge(int row, Piece piece, int version, Map<String, String> texts);

    final JudgedRow<Piece> judged(int row, Piece before, Piece after, int version) {
        String id = before.number().value();
        Faults faults = new Faults();
        Ahead.check(archive.ledger(), before, after, faults);
        if (!faults.isEmpty()) {
            return JudgedRow.refused(row, id, List.copyOf(faults.all().values()));
        }
        List<Written> missing = missing(after, before);
        return missing.isEmpty()
                ? new JudgedRow<>(row, Verdict.UPDATED, id, after, version, List.of())
                : JudgedRow.refused(row, id, missing);
    }
}
