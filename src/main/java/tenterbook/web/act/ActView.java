package tenterbook.web.act;

import static tenterbook.web.page.Words.w;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.facts.PieceReader;
import tenterbook.facts.Whereabouts;
import tenterbook.measure.Digest;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.history.Act;
import tenterbook.piece.history.ActField;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.record.Choices;

/**
 * The form of an act.
 *
 * @param rows one for each piece, in order
 * @param newPerson the name typed that nobody has; empty where there is none
 */
public record ActView(Act act, Form form, List<PieceRow> rows, List<Choices.Choice> people, String newPerson) {
    /**
     * A piece of the form.
     *
     * @param picture null where it has no photograph that can be shown
     * @param status as it is now, in words
     */
    public record PieceRow(
            Form form,
            String number,
            String title,
            @Nullable Digest picture,
            String status) {}

    static ActView of(Site site, Act act, Form form, String newPerson) {
        List<PieceRow> rows =
                form.rows("pieces").stream().map(row -> row(site, row)).toList();
        return new ActView(act, form, rows, act.asks(ActField.PARTY) ? Choices.parties(site) : List.of(), newPerson);
    }

    private static PieceRow row(Site site, Form row) {
        String number = row.text("piece");
        Optional<Piece> found = site.archive().piece(number);
        return found.map(piece -> new PieceRow(
                        row, piece.shown().value(), piece.title(), picture(site, piece), status(site, piece)))
                .orElseGet(() -> new PieceRow(row, number, "", null, ""));
    }

    static String status(Site site, Piece piece) {
        Whereabouts now = PieceReader.of(site.archive(), piece).whereabouts();
        return now.status() == null ? w("act.not-recorded") : w("act.status", "status", now.status());
    }

    static @Nullable Digest picture(Site site, Piece piece) {
        return piece.photos().stream()
                .map(PiecePhoto::photo)
                .filter(digest -> site.ledger()
                        .find(Kinds.PHOTO, digest.hex())
                        .filter(photo -> photo.record().viewable())
                        .isPresent())
                .findFirst()
                .orElse(null);
    }

    /** How tax is charged, by codes. */
    public List<Choices.Choice> taxWays() {
        return Choices.taxWays();
    }

    /** Words of a label that differs from act to act, as in 'Buyer' or 'Borrower'. */
    public String label(String field) {
        return w("act." + field + "." + act);
    }

    /** Photographs that were taken in already, by their digests. */
    public List<String> photographs() {
        return Arrays.stream(form.text("photos").split("[,\\s]+"))
                .filter(photo -> photo.matches("[0-9a-f]{64}"))
                .toList();
    }

    public boolean asks(String field) {
        return act.asks(ActField.valueOf(field));
    }
}
