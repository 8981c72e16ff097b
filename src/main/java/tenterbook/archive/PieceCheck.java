package tenterbook.archive;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.field.Faults;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.Status;
import tenterbook.piece.history.Act;
import tenterbook.piece.history.Custody;
import tenterbook.words.Message;

/**
 * What is wrong with a piece though each of its fields can be read: a number or a place in an edition that another piece has, an event that cannot follow
 * those before it, and a status or holder that does not come from an event.
 */
public final class PieceCheck {
    private PieceCheck() {}

    /**
     * Adds a fault to {@code laterNumbers}, {@code edition}, {@code status}, {@code holder} or the kind of an event, as in {@code events.0.kind}. What was
     * recorded so already passes. That the first number of a new piece is free is held by the ledger.
     *
     * @param before the piece as it was; null for a new one
     */
    public static void check(Editions editions, @Nullable Piece before, Piece after, Faults faults) {
        checkRecorded(editions, before, after, faults);
        Status status = before == null ? null : before.status();
        PartyId holder = before == null ? null : before.holder();
        typedApart(status, holder, after, faults);
    }

    /** As {@link #check}, of what was recorded in former times, as in a sheet or an earlier version: it keeps its status and holder until an event decides. */
    public static void checkRecorded(Editions editions, @Nullable Piece before, Piece after, Faults faults) {
        checkBesideOthers(editions, before, after, faults);
        Ahead.check(editions.ledger(), before, after, faults);
        Custody.added(before == null ? List.of() : before.events(), after.events())
                .forEach((at, why) -> faults.add("events." + at + ".kind", why));
    }

    /** As {@link #check}, of its numbers and its place in an edition alone, which another piece may have meanwhile. */
    public static void checkBesideOthers(Editions editions, @Nullable Piece before, Piece after, Faults faults) {
        Set<PieceNumber> had = before == null ? Set.of(after.number()) : before.numbers();
        for (PieceNumber number : after.numbers()) {
            if (!had.contains(number)) {
                if (number.value().equals(NewIdentifier.RESERVED)) {
                    faults.add("laterNumbers", Message.of("form.reserved", "name", NewIdentifier.RESERVED));
                }
                editions.ledger()
                        .holder(Kinds.PIECE, number.value())
                        .filter(holder -> !holder.equals(after.number().value()))
                        .ifPresent(holder -> faults.add(
                                "laterNumbers", Message.of("piece.number-taken", "number", number, "piece", holder)));
            }
        }
        editions.check(before, after, faults);
    }

    private static void typedApart(@Nullable Status status, @Nullable PartyId holder, Piece after, Faults faults) {
        Custody now = Custody.of(after.events());
        Status typed = after.status();
        if (typed != null && typed != status && typed != now.status()) {
            faults.add(
                    "status",
                    Act.bringing(typed, after)
                            .map(act -> Message.of("custody.status-by-act", "act", act, "word", act.toString()))
                            .orElseGet(() -> Message.of("custody.status-by-none", "status", typed)));
        }
        PartyId named = after.holder();
        if (named != null && !named.equals(holder) && !named.equals(now.holder())) {
            faults.add(
                    "holder",
                    Message.of(
                            "custody.holder-by-act",
                            "sell",
                            Act.SELL,
                            "give",
                            Act.GIVE,
                            "lend",
                            Act.LEND,
                            "consign",
                            Act.CONSIGN));
        }
    }

    /** The piece without a status or holder that it did not have before and its events give anyway, so that later events go on deciding. */
    public static Piece followingEvents(@Nullable Piece before, Piece after) {
        Custody now = Custody.of(after.events());
        boolean status = after.status() != null
                && after.status() == now.status()
                && (before == null || before.status() != after.status());
        boolean holder = after.holder() != null
                && after.holder().equals(now.holder())
                && (before == null || !Objects.equals(before.holder(), after.holder()));
        return status || holder
                ? after.withEvents(
                        after.events(),
                        status ? null : after.status(),
                        holder ? null : after.holder(),
                        after.place(),
                        after.price())
                : after;
    }
}
