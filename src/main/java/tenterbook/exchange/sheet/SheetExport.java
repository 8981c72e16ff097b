package tenterbook.exchange.sheet;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Part;
import tenterbook.archive.record.PieceRecord;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.words.Conventions;
import tenterbook.words.Written;

/** The records of a kind as the rows of its sheet; imported again they change nothing. */
public final class SheetExport {
    private static final int BATCH = 500;

    private final SheetKind kind;
    private final List<SheetColumn> columns;
    private final boolean all;

    /** @param all also what is about persons or money */
    public SheetExport(SheetKind kind, boolean all) {
        this.kind = kind;
        this.all = all;
        this.columns = kind.columns().stream()
                .filter(column -> all || !column.personal())
                .toList();
    }

    /** Whether its rows can be told apart without what is about persons. */
    public boolean possible() {
        return columns.stream().anyMatch(column -> column.path().equals(kind.identifying()));
    }

    public List<String> headings(Conventions reader) {
        return columns.stream()
                .map(column -> Written.capital(column.label().in(reader)))
                .toList();
    }

    /** Hands on one row after another. */
    public void rows(Archive archive, Consumer<List<String>> row) {
        switch (kind) {
            case SALES ->
                each(
                        archive,
                        Kinds.PIECE,
                        piece -> piece.events()
                                .forEach(event -> row.accept(cells(of(piece, PieceRecord.EVENT.write(event))))));
            case PHOTOGRAPHS -> photographs(archive, row);
            default -> rows(archive, kind.kind(), row);
        }
    }

    private static ObjectNode of(Piece piece, ObjectNode json) {
        return json.put(SheetKind.PIECE, piece.number().value());
    }

    private void photographs(Archive archive, Consumer<List<String>> row) {
        PhotoNames names = PhotoNames.of(archive);
        int named = columns.stream().map(SheetColumn::path).toList().indexOf(PhotographRows.PHOTO);
        each(archive, Kinds.PIECE, piece -> {
            for (PiecePhoto photo : piece.photos()) {
                List<String> cells = cells(of(piece, PieceRecord.PHOTO.write(photo)));
                if (all) {
                    // What a file was called may name a person.
                    cells.set(named, names.nameOf(photo.photo()));
                }
                row.accept(cells);
            }
        });
    }

    @SuppressWarnings("unchecked")
    private <T> void rows(Archive archive, Kind<T> of, Consumer<List<String>> row) {
        Part<T> part = (Part<T>) kind.part();
        each(archive, of, record -> row.accept(cells(part.write(record))));
    }

    /** Every record in use, in order of identifier; no more than {@link #BATCH} are in memory. */
    private static <T> void each(Archive archive, Kind<T> of, Consumer<T> work) {
        List<String> ids = archive.ledger().allIdsEverUsed(of).stream().sorted().toList();
        for (int from = 0; from < ids.size(); from += BATCH) {
            List<String> some = ids.subList(from, Math.min(ids.size(), from + BATCH));
            Map<String, T> records = archive.ledger().records(of, some);
            some.stream().map(records::get).filter(Objects::nonNull).forEach(work);
        }
    }

    private List<String> cells(ObjectNode json) {
        List<String> cells = new ArrayList<>();
        columns.forEach(column -> cells.add(RecordCells.text(column, json)));
        return cells;
    }
}
