package tenterbook.facts;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;
import tenterbook.piece.history.Custody;
import tenterbook.words.Message;
import tenterbook.words.PaperLanguage;

/**
 * The status and the holder of a piece. A typed status or holder is used as it is; otherwise its events decide. Where both
 * are there and disagree, the disagreement is part of the fact.
 *
 * @param piece the piece
 * @param custody what its events give
 */
public record Whereabouts(Piece piece, Custody custody) {
    /** Further typed statuses that agree with what events give. Lost and destroyed can follow any. */
    private static final Map<Status, Set<Status>> ALSO = new EnumMap<>(Map.of(
            Status.CONSIGNED, EnumSet.of(Status.HANGING, Status.RESERVED),
            Status.ON_LOAN, EnumSet.of(Status.HANGING),
            Status.IN_STOCK, EnumSet.of(Status.KEPT, Status.SECOND, Status.HANGING, Status.RESERVED),
            Status.SECOND, EnumSet.of(Status.IN_STOCK, Status.KEPT, Status.HANGING),
            Status.RESERVED, EnumSet.of(Status.IN_STOCK, Status.CONSIGNED, Status.HANGING)));

    private static final Set<Status> AWAY = EnumSet.of(
            Status.CONSIGNED, Status.ON_LOAN, Status.HANGING, Status.SOLD, Status.GIVEN, Status.LOST, Status.DESTROYED);

    static Whereabouts of(Piece piece) {
        return new Whereabouts(piece, Custody.of(piece.events()));
    }

    /** As typed, else from the events; null for neither. */
    public @Nullable Status status() {
        return statusTyped() ? piece.status() : custody.status();
    }

    public boolean statusTyped() {
        return piece.status() != null;
    }

    /** Whether by its status it is no longer with the maker. */
    public boolean away() {
        Status status = status();
        return status != null && AWAY.contains(status);
    }

    /** The status in words, as in 'sold'; empty where not known. */
    public String statusInWords() {
        Status status = status();
        return status == null ? "" : PaperLanguage.word(status);
    }

    /** Where the status comes from if it was not typed, as in 'from the event of 2024-05-01'; else empty. */
    public Optional<Message> statusFrom() {
        return statusTyped() || newest() == null ? Optional.empty() : Optional.of(ofNewest("facts.status-from"));
    }

    private @Nullable Event newest() {
        return custody.decidedBy();
    }

    /** As typed, else who has it by its events, unless the typed status contradicts them. */
    public Optional<PartyId> holder() {
        if (piece.holder() != null) {
            return Optional.of(piece.holder());
        }
        return disagreement().isEmpty() ? Optional.ofNullable(custody.holder()) : Optional.empty();
    }

    /** How the typed status and the newest event contradict each other, in a sentence without names; else empty. */
    public Optional<Message> disagreement() {
        Event newest = newest();
        if (!statusTyped() || newest == null || custody.status() == piece.status()) {
            return Optional.empty();
        }
        boolean agree = piece.status() == Status.LOST
                || piece.status() == Status.DESTROYED
                || ALSO.getOrDefault(custody.status(), Set.of()).contains(piece.status());
        return agree
                ? Optional.empty()
                : Optional.of(Message.of(
                        "facts.status-differs",
                        "status",
                        piece.status(),
                        "event",
                        newest.kind(),
                        "dated",
                        newest.when().recorded(),
                        "day",
                        newest.when()));
    }

    /** How the typed holder and the newest event contradict each other, in a sentence without names; else empty. */
    public Optional<Message> holderDisagreement() {
        Event newest = newest();
        if (piece.holder() == null || newest == null) {
            return Optional.empty();
        }
        if (newest.kind() == EventKind.RETURNED) {
            return newest.party() != null && newest.party().equals(piece.holder())
                    ? Optional.of(Message.of(
                            "facts.holder-returned", "dated", newest.when().recorded(), "day", newest.when()))
                    : Optional.empty();
        }
        return custody.holder() != null && !custody.holder().equals(piece.holder())
                ? Optional.of(ofNewest("facts.holder-differs"))
                : Optional.empty();
    }

    private Message ofNewest(String key) {
        Event newest = newest();
        return Message.of(key, "event", newest.kind(), "dated", newest.when().recorded(), "day", newest.when());
    }
}
