package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import org.jspecify.annotations.Nullable;
import tenterbook.archive.Ahead;
import tenterbook.archive.Editions;
import tenterbook.archive.PieceCheck;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.InputRefused;
import tenterbook.ledger.Ledger;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.RecordForm;

/** What {@link PieceCheck} finds wrong in one save of a piece, and what that changes in other pieces; of other records what lies {@link Ahead}. */
final class SaveRules {
    private final Editions editions;
    private final Ledger ledger;

    SaveRules(Site site) {
        this.editions = new Editions(site.archive());
        this.ledger = site.ledger();
    }

    /**
     * The record with what was confirmed; a problem stands beside the field of each thing that is refused or asked about.
     *
     * @param read null where the form could not be read; then null
     */
    @SuppressWarnings("unchecked")
    <T> @Nullable T applied(RecordForm<T> forms, Form form, @Nullable T old, @Nullable T read) {
        if (!(read instanceof Piece piece)) {
            faults(old, read).all().forEach((field, sentence) -> forms.problem(form, field, w(sentence)));
            return read;
        }
        Piece before = (Piece) old;
        Piece settled = settled(before, piece);
        Piece after = settled;
        if (form.checked("enlarge")) {
            after = editions.growth(before, settled)
                    .map(growth -> settled.with(settled.inEdition().enlarged(growth.from(), growth.to())))
                    .orElse(settled);
        }
        faults(before, after).all().forEach((field, sentence) -> forms.problem(form, field, w(sentence)));
        if (editions.growth(before, after).isPresent()) {
            form.put("asksToEnlarge", "yes");
        }
        return (T) after;
    }

    /** As {@link Editions#settled} and {@link PieceCheck#followingEvents}; other records as they are. */
    @SuppressWarnings("unchecked")
    <T> T settled(@Nullable T before, T record) {
        if (!(record instanceof Piece piece)) {
            return record;
        }
        Piece old = (Piece) before;
        return (T) PieceCheck.followingEvents(old, editions.settled(old, piece));
    }

    /**
     * @param before null for a new one
     * @throws InputRefused with everything that is refused
     */
    <T> void check(Kind<T> kind, @Nullable T before, T after) {
        Faults faults = faults(before, after);
        if (!faults.isEmpty()) {
            throw new InputRefused(kind.called(), faults);
        }
    }

    private Faults faults(@Nullable Object before, @Nullable Object after) {
        Faults faults = new Faults();
        if (after instanceof Piece piece) {
            PieceCheck.check(editions, (Piece) before, piece, faults);
        } else {
            Ahead.check(ledger, before, after, faults);
        }
        return faults;
    }

    /**
     * Of an earlier version that is to hold again.
     *
     * @param before null where the record was withdrawn
     */
    static <T> Faults again(Site site, @Nullable T before, T earlier) {
        Faults faults = new Faults();
        if (earlier instanceof Piece piece) {
            PieceCheck.checkBesideOthers(new Editions(site.archive()), (Piece) before, piece, faults);
        }
        return faults;
    }

    void spread(LedgerTransaction act, Object record) {
        if (record instanceof Piece piece) {
            editions.spread(act, piece);
        }
    }
}
