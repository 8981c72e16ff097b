package tenterbook.facts;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;
import tenterbook.words.Message;

/**
 * The status and the holder of a piece. A typed status or holder is used as it is; otherwise the newest event decides. Where
 * both are there and disagree, the disagreement is part of the fact.
 *
 * @param piece the piece
 * @param newest the newest event that moved the piece; null where there is none
 */
public record Whereabouts(Piece piece, @Nullable Event newest) {
    /** After each event, the statuses that agree with it, the likeliest first. Lost and destroyed can follow any. */
    private static final Map<EventKind, Set<Status>> AFTER = new EnumMap<>(Map.of(
            EventKind.CONSIGNED, EnumSet.of(Status.CONSIGNED, Status.HANGING),
            EventKind.LENT, EnumSet.of(Status.ON_LOAN, Status.HANGING),
            EventKind.RETURNED, EnumSet.of(Status.IN_STOCK, Status.KEPT, Status.SECOND, Status.HANGING),
            EventKind.SOLD, EnumSet.of(Status.SOLD),
            EventKind.GIVEN, EnumSet.of(Status.GIVEN)));

    private static final Set<Status> AWAY = EnumSet.of(
            Status.CONSIGNED, Status.ON_LOAN, Status.HANGING, Status.SOLD, Status.GIVEN, Status.LOST, Status.DESTROYED);

    static Whereabouts of(Piece piece) {
        Event newest = null;
        for (Event event : piece.events()) {
            if (AFTER.containsKey(event.kind()) && (newest == null || !earlier(event.when(), newest.when()))) {
                newest = event;
            }
        }
        return new Whereabouts(piece, newest);
    }

    /** Whether one is known to lie before the other; of undated events the one entered later counts as the newer. */
    private static boolean earlier(PartialDate one, PartialDate other) {
        return one.known() && other.known() && first(one).isBefore(first(other));
    }

    private static LocalDate first(PartialDate when) {
        return when.from() == null ? when.to() : when.from();
    }

    /** As typed, else from the newest event; null for neither. */
    public @Nullable Status status() {
        if (statusTyped()) {
            return piece.status();
        }
        if (newest == null) {
            return null;
        }
        return switch (newest.kind()) {
            case CONSIGNED -> Status.CONSIGNED;
            case LENT -> Status.ON_LOAN;
            case RETURNED -> Status.IN_STOCK;
            case SOLD -> Status.SOLD;
            case GIVEN -> Status.GIVEN;
            default -> null;
        };
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
        return status == null ? "" : status.toString();
    }

    /** Where the status comes from if it was not typed, as in 'from the event of 2024-05-01'; else empty. */
    public Optional<Message> statusFrom() {
        return statusTyped() || newest == null ? Optional.empty() : Optional.of(ofNewest("facts.status-from"));
    }

    /** As typed, else the receiver in the newest event, unless it came back or the typed status contradicts that event. */
    public Optional<PartyId> holder() {
        if (piece.holder() != null) {
            return Optional.of(piece.holder());
        }
        return disagreement().isEmpty() ? receiver() : Optional.empty();
    }

    private Optional<PartyId> receiver() {
        return newest == null || newest.kind() == EventKind.RETURNED
                ? Optional.empty()
                : Optional.ofNullable(newest.party());
    }

    /** How the typed status and the newest event contradict each other, in a sentence without names; else empty. */
    public Optional<Message> disagreement() {
        boolean disagree = statusTyped()
                && newest != null
                && piece.status() != Status.LOST
                && piece.status() != Status.DESTROYED
                && !AFTER.get(newest.kind()).contains(piece.status());
        return disagree
                ? Optional.of(Message.of(
                        "facts.status-differs",
                        "status",
                        piece.status(),
                        "event",
                        newest.kind(),
                        "dated",
                        newest.when().recorded(),
                        "day",
                        newest.when()))
                : Optional.empty();
    }

    /** How the typed holder and the newest event contradict each other, in a sentence without names; else empty. */
    public Optional<Message> holderDisagreement() {
        if (piece.holder() == null || newest == null) {
            return Optional.empty();
        }
        if (newest.kind() == EventKind.RETURNED) {
            return newest.party() != null && newest.party().equals(piece.holder())
                    ? Optional.of(Message.of(
                            "facts.holder-returned", "dated", newest.when().recorded(), "day", newest.when()))
                    : Optional.empty();
        }
        return newest.party() != null && !newest.party().equals(piece.holder())
                ? Optional.of(ofNewest("facts.holder-differs"))
                : Optional.empty();
    }

    private Message ofNewest(String key) {
        return Message.of(key, "event", newest.kind(), "dated", newest.when().recorded(), "day", newest.when());
    }
}
