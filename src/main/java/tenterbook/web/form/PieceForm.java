package tenterbook.web.form;

import java.util.Currency;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.PieceRecord;
import tenterbook.piece.Piece;
import tenterbook.piece.history.Custody;
import tenterbook.web.page.Words;

/**
 * A piece. Where the form shows no photographs, those of the piece stay; answers to label rules always do. An event that cannot follow what came before is asked
 * about in its row, unless it was recorded so already.
 */
final class PieceForm extends RecordForm<Piece> {
    PieceForm(Supplier<Currency> currency) {
        super(Kinds.PIECE, PieceRecord.PIECE, Set.of("photos.regions", "answers"), currency);
    }

    @Override
    public Piece read(Form form, Piece old) {
        Piece read = super.read(form, old);
        if (read != null) {
            List<Form> rows = form.rows("events").stream()
                    .filter(row -> !row.checked("leaveOut") && !untouched("events", row))
                    .toList();
            Custody.added(old == null ? List.of() : old.events(), read.events())
                    .forEach((at, why) -> rows.get(at).problem("kind", Words.w(why)));
            if (form.hasProblems()) {
                return null;
            }
        }
        boolean photosNotShown = old != null && form.rows("photos").isEmpty() && !form.has("photosShown");
        return read != null && photosNotShown ? read.withPhotos(old.photos()) : read;
    }
}
