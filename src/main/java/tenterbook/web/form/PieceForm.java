package tenterbook.web.form;

import java.util.Currency;
import java.util.Set;
import java.util.function.Supplier;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.PieceRecord;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.web.page.Words;

/**
 * A piece. Where the form shows no photographs, those of the piece stay; answers to label rules always do.
 */
public final class PieceForm extends RecordForm<Piece> {
    /** The field for the number that the piece has now. */
    public static final String NUMBER_NOW = "numberNow";

    PieceForm(Supplier<Currency> currency) {
        super(
                Kinds.PIECE,
                PieceRecord.PIECE,
                Set.of("photos.regions", "answers", "laterNumbers", "editionEnlargedFrom", "editionEnlargedTo"),
                currency);
    }

    @Override
    public Form filled(Piece piece) {
        return super.filled(piece).put(NUMBER_NOW, piece.shown());
    }

    @Override
    public Piece read(Form form, Piece old) {
        Piece read = super.read(form, old);
        if (read != null) {
            read = renumbered(form, old, read);
            askAboutEdition(form, old, read);
            if (form.hasProblems()) {
                return null;
            }
        }
        boolean photosNotShown = old != null && form.rows("photos").isEmpty() && !form.has("photosShown");
        return read != null && photosNotShown ? read.withPhotos(old.photos()) : read;
    }

    @Override
    public void problem(Form form, String at, String sentence) {
        super.problem(form, at.equals("laterNumbers") ? NUMBER_NOW : at, sentence);
    }

    /** With the number typed, where that is another; a problem stands beside the field where it is none. */
    private static Piece renumbered(Form form, Piece old, Piece read) {
        String typed = form.text(NUMBER_NOW);
        if (old == null || typed.isEmpty() || typed.equals(old.shown().value())) {
            return read;
        }
        PieceNumber number = form.read(NUMBER_NOW, null, PieceNumber::new);
        return number == null ? read : read.renumbered(number);
    }

    /** An edition that is newly typed and not understood is asked about once. */
    private static void askAboutEdition(Form form, Piece old, Piece read) {
        boolean typed =
                !read.edition().isEmpty() && (old == null || !old.edition().equals(read.edition()));
        if (typed && read.placeInEdition().isEmpty() && !form.checked("keepEdition")) {
            form.put("asksToKeep", "yes");
            form.problem("edition", Words.w("edition.not-read", "found", read.edition()));
        }
    }
}
