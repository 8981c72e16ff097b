package tenterbook.archive.act;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tenterbook.archive.Archive;
import tenterbook.archive.Editions;
import tenterbook.archive.Kinds;
import tenterbook.archive.PieceCheck;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.InputRefused;
import tenterbook.ledger.Saved;
import tenterbook.piece.Event;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.history.Act;
import tenterbook.piece.history.Custody;
import tenterbook.words.Message;

/**
 * What was recorded wrongly of an event, put right. The event as it was stays in the saved versions.
 *
 * @param was the event as it is recorded, whole
 * @param as the event as it happened, of the same kind
 * @param reason kept with the new version
 */
public record Correction(PieceNumber piece, Event was, Event as, String reason) {
    public Correction {
        reason = reason == null ? "" : reason.strip();
    }

    /**
     * @throws InputRefused where the piece has no such event, or cannot have had the other one
     * @throws tenterbook.ledger.Conflict where the piece was saved by someone else in the same moment
     */
    public Saved<Piece> write(Archive archive) {
        Faults faults = new Faults();
        Optional<Saved<Piece>> found = archive.ledger().find(Kinds.PIECE, piece.value());
        if (found.isEmpty()) {
            faults.add("piece", Message.of("act.no-such-piece", "number", piece));
            throw refused(faults);
        }
        Piece before = found.get().record();
        int at = before.events().indexOf(was);
        if (at < 0) {
            faults.add("was", Message.of("act.correct.no-such-event", "number", piece));
            throw refused(faults);
        }
        if (reason.isEmpty()) {
            faults.add("reason", Message.of("act.correct.no-reason"));
        }
        if (was.equals(as)) {
            faults.add("as", Message.of("act.correct.nothing"));
        }
        if (was.kind() != as.kind()) {
            faults.add("as.kind", Message.of("act.correct.kind-stays", "kind", was.kind()));
        }
        ActFields.checkAsked(was, as, faults);
        Piece after = Act.corrected(before, at, as);
        check(archive, before, after, faults);
        if (as.party() != null
                && !Objects.equals(as.party(), was.party())
                && archive.party(as.party().value()).isEmpty()) {
            faults.add("as.party", Message.of("act.no-such-person", "found", as.party()));
        }
        if (!faults.isEmpty()) {
            throw refused(faults);
        }
        String note = Message.of("act.correct.note", "event", was.kind(), "reason", reason)
                .inEnglish();
        return archive.ledger()
                .write(
                        archive.author(),
                        ledger -> ledger.save(Kinds.PIECE, after, found.get().version(), note));
    }

    /** What becomes impossible by it, also of another event or of a status typed in former times, is said at its day. */
    private void check(Archive archive, Piece before, Piece after, Faults faults) {
        if (Act.beforeFinished(before, was).isEmpty()) {
            Act.beforeFinished(before, as).ifPresent(why -> faults.add("as.when", why));
        }
        Faults found = new Faults();
        PieceCheck.checkRecorded(new Editions(archive), before, after, found);
        List.copyOf(found.all().values()).forEach(why -> faults.add("as.when", why));
        Custody.added(Act.allEvents(before), Act.allEvents(after)).values().forEach(why -> faults.add("as.when", why));
    }

    private static InputRefused refused(Faults faults) {
        return new InputRefused(Message.of("act.correct.called"), faults);
    }
}
