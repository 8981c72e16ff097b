package tenterbook.web.found;

import static tenterbook.web.page.Words.w;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Field;
import tenterbook.archive.record.FieldWords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.facts.PieceFacts;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.material.Role;
import tenterbook.measure.Unit;
import tenterbook.piece.Fault;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.search.query.Order;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a table, a comparison and a file can show of a piece. What several records are needed for comes from {@link PieceFacts}. */
public enum Column {
    NUMBER("number", each -> Cell.of(piece(each).shown().value())),
    TITLE("title", each -> Cell.of(piece(each).title())),
    OTHER_TITLE("other-title", each -> Cell.of(piece(each).otherTitle())),
    CATEGORY("category", each -> word(piece(each).category())),
    STATUS("status", each -> word(each.facts().whereabouts().status())),
    HOLDER("holder", each -> Cell.of(each.facts().holder().map(Party::title).orElse(""))),
    PLACE("place", each -> Cell.of(piece(each).place())),
    BOARD("board", each -> Cell.several(Derived.boards(each.facts()))),
    CLOTH(
            "cloth",
            each -> Cell.several(
                    each.facts().cloth().cloths().stream().map(Cloth::title).toList())),
    FIBRE("fibre", each -> Cell.several(each.facts().cloth().fibres())),
    FOLD("fold", each -> Cell.several(Derived.folds(each.facts()))),
    LAYERS("layers", each -> Derived.layers(each.facts()), Unit.COUNT),
    DYES("dyes", each -> Cell.several(lots(each.facts(), Role.DYE))),
    MORDANTS("mordants", each -> Cell.several(lots(each.facts(), Role.MORDANT))),
    VATS("vats", each -> Cell.several(Derived.vats(each.facts()))),
    DIPS("dips", each -> Derived.dips(each.facts()), Unit.COUNT),
    LENGTH("length", each -> Cell.of(piece(each).length(), Unit.CENTIMETRE), Unit.CENTIMETRE),
    WIDTH("width", each -> Cell.of(piece(each).width(), Unit.CENTIMETRE), Unit.CENTIMETRE),
    SIZE("size", each -> Cell.of(Derived.size(piece(each)))),
    MASS("mass", each -> Cell.of(piece(each).mass(), Unit.GRAM), Unit.GRAM),
    PRICE("price", each -> Derived.price(piece(each)), Unit.COUNT),
    FINISHED("finished", each -> Cell.of(piece(each).finished()), Unit.COUNT),
    EDITION("edition", each -> Cell.of(piece(each).edition())),
    COLOURS("colours", each -> Cell.several(Derived.colours(each.facts()))),
    FAULTS("faults", each -> Cell.several(Fault.kinds(piece(each).faults()))),
    EXAMINED("examined", each -> Derived.examined(each.facts().condition()), Unit.COUNT),
    OVERALL("overall", each -> word(each.facts().condition().overall().orElse(null))),
    TAG("tag", each -> Cell.several(Derived.tags(each.tags())));

    /** Shown where nobody chose any. */
    static final List<Column> USUAL = List.of(NUMBER, TITLE, STATUS, BOARD, CLOTH, DIPS, SIZE, PRICE, FINISHED);

    private final String word;
    private final Function<Subject, Cell> cell;
    private final @Nullable Unit unit;

    Column(String word, Function<Subject, Cell> cell) {
        this(word, cell, null);
    }

    /** @param unit of both ends; without a symbol for days, money and counts */
    Column(String word, Function<Subject, Cell> cell, @Nullable Unit unit) {
        this.word = word;
        this.cell = cell;
        this.unit = unit;
    }

    private static Piece piece(Subject subject) {
        return subject.facts().piece();
    }

    private static Cell word(@Nullable Worded choice) {
        return Cell.of(choice == null ? "" : w(choice));
    }

    private static List<String> lots(PieceFacts facts, Role role) {
        return facts.lotsUsed(role).map(Lot::title).toList();
    }

    /** The value in the address. */
    public String word() {
        return word;
    }

    Cell of(Subject subject) {
        return cell.apply(subject);
    }

    /** Whether its values have two ends. */
    public boolean amount() {
        return unit != null;
    }

    /** The symbol of the unit of both ends; empty for counts, days and money. */
    public String symbol() {
        return unit == null ? "" : unit.symbol();
    }

    /** As in 'holder': its own word, else that of the described field. */
    public String label() {
        String own = "found.column." + word;
        return Message.exists(own) ? w(own) : w(FieldWords.label(PieceRecord.PIECE, described()));
    }

    /** Whether it tells of a person or of money and leaves the archive only by a stated choice, as its field is described. */
    public boolean isPrivate() {
        return PieceRecord.PIECE.field(word).filter(Field::privacy).isPresent();
    }

    private Field<Piece, ?> described() {
        return PieceRecord.PIECE
                .field(word)
                .orElseThrow(
                        () -> new IllegalStateException("No words for the column " + name().toLowerCase(Locale.ROOT)));
    }

    /** The order of the search that puts its smallest first; null where results cannot be ordered by it. */
    public @Nullable Order ascending() {
        return switch (this) {
            case NUMBER -> Order.NUMBER;
            case TITLE -> Order.TITLE;
            case DIPS -> Order.DIPS;
            case SIZE -> Order.SMALLEST;
            case PRICE -> Order.PRICE;
            case FINISHED -> Order.OLDEST;
            case EXAMINED -> Order.EXAMINED;
            default -> null;
        };
    }

    /** The order that puts its greatest first; null where there is none. */
    public @Nullable Order descending() {
        return switch (this) {
            case DIPS -> Order.MOST_DIPS;
            case SIZE -> Order.SIZE;
            case PRICE -> Order.DEAREST;
            case FINISHED -> Order.NEWEST;
            default -> null;
        };
    }
}
