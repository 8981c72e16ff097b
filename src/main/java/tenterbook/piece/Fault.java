package tenterbook.piece;

/**
 * A fault of a piece.
 *
 * @param kind in the maker's words, as in 'leak', 'bleed', 'pale inner layers'; searched as a facet
 * @param where as in 'at the beak, layer 3'
 * @param note anything else
 */
public record Fault(String kind, String where, String note) {
    public Fault {
        kind = kind == null ? "" : kind.strip();
        where = where == null ? "" : where.strip();
        note = note == null ? "" : note.strip();
    }
}
