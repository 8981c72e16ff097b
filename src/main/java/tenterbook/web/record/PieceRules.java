package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import org.jspecify.annotations.Nullable;
import tenterbook.archive.Editions;
import tenterbook.archive.PieceCheck;
import tenterbook.archive.field.Faults;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.PieceForm;

/** What {@link PieceCheck} finds wrong in the form of a piece, and what a save of one changes in them. Other records pass. */
final class PieceRules {
    private PieceRules() {}

    /**
     * The record with what was confirmed; a problem stands beside the field of each thing that is refused or asked about.
     *
     * @param read null where the form could not be read; then null
     */
    @SuppressWarnings("unchecked")
    static <T> @Nullable T applied(Site site, Form form, @Nullable T old, @Nullable T read) {
        if (!(read instanceof Piece piece)) {
            return read;
        }
        Piece before = (Piece) old;
        Piece settled = settled(site, before, piece);
        Piece after = settled;
        if (form.checked("enlarge")) {
            after = new Editions(site.archive())
                    .growth(before, settled)
                    .map(growth -> settled.with(settled.inEdition().enlarged(growth.from(), growth.to())))
                    .orElse(settled);
        }
        Faults faults = new Faults();
        PieceCheck.check(site.archive(), before, after, faults);
        faults.all().forEach((field, sentence) -> PieceForm.problem(form, field, w(sentence)));
        if (new Editions(site.archive()).growth(before, after).isPresent()) {
            form.put("asksToEnlarge", "yes");
        }
        return (T) after;
    }

    /** As {@link Editions#settled} and {@link PieceCheck#followingEvents}; other records as they are. */
    @SuppressWarnings("unchecked")
    static <T> T settled(Site site, @Nullable T before, T record) {
        if (!(record instanceof Piece piece)) {
            return record;
        }
        Piece old = (Piece) before;
        return (T) PieceCheck.followingEvents(old, new Editions(site.archive()).settled(old, piece));
    }

    static void spread(Site site, LedgerTransaction act, Object record) {
        if (record instanceof Piece piece) {
            new Editions(site.archive()).spread(act, piece);
        }
    }
}
