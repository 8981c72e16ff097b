package tenterbook.piece.agreement;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.piece.PieceNumber;

/**
 * A piece of an agreement.
 *
 * @param value agreed for insurance in a loan, the price agreed in a consignment; null where none is agreed
 * @param floor the lowest price at which the other party may sell it; null where none is agreed
 * @param theirNumber the other party's own number for it; empty where not recorded
 */
public record AgreedPiece(
        PieceNumber piece, @Nullable Money value, @Nullable Money floor, String theirNumber, String note) {
    public AgreedPiece {
        theirNumber = theirNumber == null ? "" : theirNumber.strip();
        note = note == null ? "" : note.strip();
    }
}
