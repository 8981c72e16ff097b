package tenterbook.facts;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import tenterbook.piece.Status;
import tenterbook.piece.fair.Fair;
import tenterbook.words.Message;

/**
 * Whether a piece can be at a fair: by its typed status, else by its events and the agreement with the same party. A piece of
 * which nothing is recorded is not held to be away.
 */
public final class Availability {
    private static final Set<Status> GONE = EnumSet.of(Status.SOLD, Status.GIVEN, Status.LOST, Status.DESTROYED);
    private static final Set<Status> ELSEWHERE =
            EnumSet.of(Status.CONSIGNED, Status.ON_LOAN, Status.RESERVED, Status.HANGING);

    private Availability() {}

    /** Why it cannot be there as far as is recorded; empty where nothing speaks against it. */
    public static Optional<Message> refusal(PieceFacts facts, Fair fair, LocalDate today) {
        Whereabouts now = facts.whereabouts();
        Status status = now.status();
        if (status == null) {
            return Optional.empty();
        }
        if (GONE.contains(status)) {
            return Optional.of(Message.of("facts.gone-already", "status", status));
        }
        Optional<Away> away = now.statusTyped()
                ? Optional.empty()
                : Away.of(facts.piece(), facts.agreements().get());
        if (away.isPresent()) {
            return refusal(away.get(), fair, today);
        }
        return ELSEWHERE.contains(status)
                ? Optional.of(Message.of("facts.elsewhere", "status", status))
                : Optional.empty();
    }

    private static Optional<Message> refusal(Away away, Fair fair, LocalDate today) {
        LocalDate end = away.end();
        LocalDate begins = fair.firstDay();
        if (end == null) {
            return Optional.of(
                    Message.of("facts.away-without-end", "event", away.event().kind()));
        }
        if (away.overdue(today)) {
            return Optional.of(
                    Message.of("facts.away-overdue", "event", away.event().kind(), "until", away.until()));
        }
        return begins == null || !end.isBefore(begins)
                ? Optional.of(
                        Message.of("facts.away-until", "event", away.event().kind(), "until", away.until()))
                : Optional.empty();
    }
}
