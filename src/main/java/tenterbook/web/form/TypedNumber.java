package tenterbook.web.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.search.query.PlainNumber;

/**
 * The number of a piece as a person types it into a field: ‘v24-020’, ‘V24 20’ and ‘v24/20’ are V24-020 where exactly one piece
 * matches. A number that is typed as it is recorded goes before.
 */
public final class TypedNumber {
    private final Archive archive;
    private List<String> all = List.of();

    public TypedNumber(Archive archive) {
        this.archive = archive;
    }

    public static Optional<Piece> piece(Archive archive, String typed) {
        return new TypedNumber(archive).saved(typed).map(Saved::record);
    }

    /** Puts the recorded number in place of the one typed in a field; one that names no piece stays. */
    public static void put(Archive archive, Form form, String field) {
        if (form.has(field)) {
            piece(archive, form.text(field)).ifPresent(piece -> form.put(field, piece.number()));
        }
    }

    public Optional<Saved<Piece>> saved(String typed) {
        String number = typed.strip();
        if (number.isEmpty()) {
            return Optional.empty();
        }
        String plain = PlainNumber.of(number);
        return archive.ledger()
                .find(Kinds.PIECE, number)
                .or(() -> only(each -> each.equalsIgnoreCase(number)))
                .or(() -> plain.isEmpty()
                        ? Optional.empty()
                        : only(each -> PlainNumber.of(each).equals(plain)));
    }

    /** The one piece whose number matches; empty where none or several do. */
    private Optional<Saved<Piece>> only(Predicate<String> matches) {
        List<Saved<Piece>> found = everyNumber().stream()
                .filter(matches)
                .flatMap(each -> archive.ledger().find(Kinds.PIECE, each).stream())
                .distinct()
                .limit(2)
                .toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    /** Read when the first number is not written as it is recorded. */
    private List<String> everyNumber() {
        if (all.isEmpty()) {
            all = new ArrayList<>(archive.ledger().allIdsEverUsed(Kinds.PIECE));
            all.addAll(archive.ledger().laterNames(Kinds.PIECE));
        }
        return all;
    }
}
