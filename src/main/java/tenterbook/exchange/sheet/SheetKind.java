package tenterbook.exchange.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Field;
import tenterbook.archive.field.ListOf;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.archive.field.Written;
import tenterbook.archive.record.BoardPairRecord;
import tenterbook.archive.record.FieldWords;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StudioRecords;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Conventions;
import tenterbook.words.Language;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What the rows of a sheet are. */
public enum SheetKind implements Worded {
    PIECES("pieces", Kinds.PIECE, PieceRecord.PIECE, "", Map.of("made", 2)),
    PEOPLE("people", Kinds.PARTY, StudioRecords.PARTY, "name", Map.of()),
    CLOTHS("cloths", Kinds.CLOTH, MaterialRecords.CLOTH, "name", Map.of("content", 3)),
    LOTS("lots", Kinds.LOT, MaterialRecords.LOT, "name", Map.of()),
    BOARDS("boards", Kinds.BOARD_PAIR, BoardPairRecord.BOARD_PAIR, "image", Map.of("states", 1)),
    /** Each row an event of a piece, a sale where it names no other kind. */
    SALES("sales", Kinds.PIECE, PieceRecord.EVENT, "", Map.of()),
    /** Each row one photograph or more of a piece, called as their files were when they came in. */
    PHOTOGRAPHS("photographs", Kinds.PIECE, PieceRecord.PHOTO, "", Map.of());

    /** The column that names the piece where a row is something of a piece. */
    static final String PIECE = "piece";

    private final String word;
    private final Kind<?> kind;
    private final Part<?> part;
    private final String naming;
    private final List<SheetColumn> columns;

    /**
     * @param naming the field by which a row without an identifier is found, and from which a new identifier is made; empty where a
     *     row needs its identifier
     * @param rows of lists, how many of them have columns
     */
    SheetKind(String word, Kind<?> kind, Part<?> part, String naming, Map<String, Integer> rows) {
        this.word = word;
        this.kind = kind;
        this.part = part;
        this.naming = naming;
        List<SheetColumn> all = new ArrayList<>();
        if (ofPiece()) {
            all.add(new SheetColumn(
                    PIECE, Plain.identifier(PieceNumber::new), false, Message.of("import.column-piece")));
        }
        for (Field<?, ?> field : part.fields()) {
            if (field.value() instanceof Written<?> written) {
                all.add(column(field.name(), written, field.privacy()));
            } else if (field.value() instanceof ListOf<?> list && list.element() instanceof Part<?> row) {
                for (int i = 0; i < rows.getOrDefault(field.name(), 0); i++) {
                    for (Field<?, ?> inner : row.fields()) {
                        if (inner.value() instanceof Written<?> written) {
                            all.add(column(field.name() + "." + i + "." + inner.name(), written, inner.privacy()));
                        }
                    }
                }
            }
        }
        this.columns = List.copyOf(all);
    }

    private SheetColumn column(String path, Written<?> value, boolean personal) {
        return new SheetColumn(
                path,
                value,
                personal,
                conventions -> FieldWords.path(part, path).in(conventions));
    }

    /** Whether a row is something of a piece, not a record of its own. */
    boolean ofPiece() {
        return kind == Kinds.PIECE && part != PieceRecord.PIECE;
    }

    public static Optional<SheetKind> of(@Nullable String word) {
        return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }

    /** What is written. */
    public Kind<?> kind() {
        return kind;
    }

    /** The description of a row. */
    Part<?> part() {
        return part;
    }

    String naming() {
        return naming;
    }

    /** The column that says which record a row is of. */
    public String identifying() {
        return ofPiece() ? PIECE : part.key();
    }

    public List<SheetColumn> columns() {
        return columns;
    }

    public Optional<SheetColumn> column(String path) {
        return columns.stream().filter(column -> column.path().equals(path)).findFirst();
    }

    /** The names that its sheet may have in a workbook of several: those that templates and exports have, in every language. */
    List<String> sheetNames() {
        return Arrays.stream(Language.values())
                .map(language -> in(Conventions.english().in(language)))
                .toList();
    }

    @Override
    public Message word() {
        return Message.of("import.kind." + word);
    }

    /** As in addresses and on the command line. */
    @Override
    public String toString() {
        return word;
    }
}
