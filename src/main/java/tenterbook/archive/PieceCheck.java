package tenterbook.archive;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Faults;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.words.Message;

/** What only the other pieces show to be wrong with a piece: a number or a place in an edition that another one has. */
public final class PieceCheck {
    /** The address of the empty form. */
    private static final String RESERVED = "new";

    private PieceCheck() {}

    /**
     * Adds a fault to {@code laterNumbers} or {@code edition}. That the first number of a new piece is free is held by the ledger.
     *
     * @param before the piece as it was; null for a new one
     */
    public static void check(Archive archive, @Nullable Piece before, Piece after, Faults faults) {
        Set<PieceNumber> had = before == null ? Set.of(after.number()) : before.numbers();
        for (PieceNumber number : after.numbers()) {
            if (!had.contains(number)) {
                if (number.value().equals(RESERVED)) {
                    faults.add("laterNumbers", Message.of("form.reserved", "name", RESERVED));
                }
                archive.ledger()
                        .holder(Kinds.PIECE, number.value())
                        .filter(holder -> !holder.equals(after.number().value()))
                        .ifPresent(holder -> faults.add(
                                "laterNumbers", Message.of("piece.number-taken", "number", number, "piece", holder)));
            }
        }
        new Editions(archive).check(before, after, faults);
    }
}
