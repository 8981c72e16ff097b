package tenterbook.web.form;

import java.util.Currency;
import java.util.Set;
import java.util.function.Supplier;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.PieceRecord;
import tenterbook.piece.Piece;

/** A piece. Where the form shows no photographs, those of the piece stay; answers to label rules always do. */
final class PieceForm extends RecordForm<Piece> {
    PieceForm(Supplier<Currency> currency) {
        super(Kinds.PIECE, PieceRecord.PIECE, Set.of("photos.regions", "answers"), currency);
    }

    @Override
    public Piece read(Form form, Piece old) {
        Piece read = super.read(form, old);
        boolean photosNotShown = old != null && form.rows("photos").isEmpty() && !form.has("photosShown");
        return read != null && photosNotShown ? read.withPhotos(old.photos()) : read;
    }
}
