package tenterbook.piece.fair;

import tenterbook.piece.PieceNumber;

/**
 * A piece chosen for a fair.
 *
 * @param box number or name of the box it travels in; empty where not recorded
 */
public record FairPiece(PieceNumber piece, String box, String note) {
    public FairPiece {
        box = box == null ? "" : box.strip();
        note = note == null ? "" : note.strip();
    }
}
