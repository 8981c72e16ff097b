package tenterbook.piece.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.PartyId;
import tenterbook.piece.Status;
import tenterbook.words.Message;

/**
 * Where a piece stands after its events, gone through in order of time. Of events whose days do not tell, the one entered
 * later counts as the later.
 *
 * @param status after the last event that decides it; null where none does
 * @param holder who has it by its events; null where the maker has, or nobody is named
 * @param decidedBy the last event that decided status or holder; null where none did
 * @param problems events that cannot follow what came before, in order of time
 */
public record Custody(
        @Nullable Status status,
        @Nullable PartyId holder,
        @Nullable Event decidedBy,
        List<Problem> problems) {
    /** An event that cannot have happened after what came before, unless something is missing in between. */
    public record Problem(Event event, Message why) {
        /**
         * Whether an event that is the same as far as the order of things goes cannot have happened for the same reason; the days that
         * the sentences name may differ, and so may its price, note and place.
         */
        private boolean same(Problem other) {
            return why.key().equals(other.why.key())
                    && event.kind() == other.event.kind()
                    && event.when().equals(other.event.when())
                    && event.unsure() == other.event.unsure()
                    && Objects.equals(event.party(), other.event.party())
                    && (!why.key().equals(ENDS_EARLY) || event.until().equals(other.event.until()));
        }
    }

    private static final String ENDS_EARLY = "custody.ends-before-it-begins";

    private static final Set<EventKind> DECIDING = EnumSet.of(
            EventKind.SOLD,
            EventKind.GIVEN,
            EventKind.LENT,
            EventKind.CONSIGNED,
            EventKind.RETURNED,
            EventKind.RESERVED,
            EventKind.RELEASED,
            EventKind.SECOND,
            EventKind.LOST,
            EventKind.FOUND,
            EventKind.DESTROYED);

    public Custody {
        problems = List.copyOf(problems);
    }

    public static Custody of(List<Event> events) {
        Walk walk = new Walk();
        inTime(events).forEach(walk::take);
        return new Custody(walk.status(), walk.holder, walk.decidedBy, walk.problems);
    }

    /** Whether an event of this kind changes status or holder. */
    static boolean decides(EventKind kind) {
        return DECIDING.contains(kind);
    }

    /** In order of time; an event without a day stays behind the one that was entered before it. */
    public static List<Event> inTime(List<Event> events) {
        List<Event> ordered = new ArrayList<>();
        for (Event event : events) {
            int at = ordered.size();
            while (at > 0 && earlier(event.when(), ordered.get(at - 1).when())) {
                at--;
            }
            ordered.add(at, event);
        }
        return ordered;
    }

    private static boolean earlier(PartialDate one, PartialDate other) {
        return one.known() && other.known() && first(one).isBefore(first(other));
    }

    private static LocalDate first(PartialDate when) {
        return when.from() == null ? when.to() : when.from();
    }

    /**
     * What is impossible in {@code after} and was not so, for the same reason, in {@code before}: sentences by the event's place in
     * {@code after}. Of two equal events of which one was impossible, the other may not become so.
     */
    public static Map<Integer, Message> added(List<Event> before, List<Event> after) {
        List<Problem> known = new ArrayList<>(of(before).problems());
        Map<Integer, Message> added = new TreeMap<>();
        for (Problem problem : of(after).problems()) {
            Optional<Problem> same =
                    known.stream().filter(each -> each.same(problem)).findFirst();
            if (same.isEmpty()) {
                added.putIfAbsent(place(after, problem.event()), problem.why());
            } else {
                known.remove(same.get());
            }
        }
        return added;
    }

    /** By identity: two events may be equal. */
    private static int place(List<Event> events, Event one) {
        int at = 0;
        while (events.get(at) != one) {
            at++;
        }
        return at;
    }

    /** Why an event of this kind cannot come after {@code events}; empty where it can. */
    public static Optional<Message> refusal(List<Event> events, Event next) {
        List<Event> all = new ArrayList<>(events);
        all.add(next);
        return added(events, all).values().stream().findFirst();
    }

    /** The state while events are gone through. */
    private static final class Walk {
        private final List<Problem> problems = new ArrayList<>();
        private Status where = Status.IN_STOCK;
        private Status beforeLoss = Status.IN_STOCK;
        private boolean reserved;
        private boolean second;
        private @Nullable PartyId holder;
        private @Nullable PartyId holderBeforeLoss;
        private @Nullable Event decidedBy;

        void take(Event event) {
            String why = event.unsure() ? "" : refusal(event.kind());
            if (!why.isEmpty()) {
                problems.add(new Problem(event, sentence(why, event)));
            }
            if (until(event)) {
                problems.add(new Problem(event, sentence(ENDS_EARLY, event)));
            }
            if (decides(event.kind())) {
                move(event);
                decidedBy = event;
            }
        }

        private static boolean until(Event event) {
            LocalDate end = event.until().to() == null
                    ? event.until().from()
                    : event.until().to();
            return event.when().known() && event.until().known() && end != null && end.isBefore(first(event.when()));
        }

        private Message sentence(String key, Event event) {
            return Message.of(
                    key,
                    "event",
                    event.kind(),
                    "itself",
                    event.when().recorded(),
                    "its",
                    event.when(),
                    "dated",
                    decidedBy != null && decidedBy.when().recorded(),
                    "day",
                    decidedBy == null ? PartialDate.UNRECORDED : decidedBy.when());
        }

        /** Key of the reason why an event of this kind cannot follow; empty where it can. */
        private String refusal(EventKind kind) {
            if (where == Status.DESTROYED) {
                return "custody.destroyed-before";
            }
            if (where == Status.LOST) {
                return kind == EventKind.FOUND || kind == EventKind.DESTROYED || kind == EventKind.OTHER
                        ? ""
                        : "custody.lost-before";
            }
            return switch (kind) {
                case SOLD, GIVEN, RESERVED, PRICED, SECOND -> gone();
                case LENT, CONSIGNED -> gone().isEmpty() ? elsewhere() : gone();
                case RETURNED -> where == Status.IN_STOCK ? "custody.not-away" : "";
                case RELEASED -> reserved ? "" : "custody.not-reserved";
                case FOUND -> "custody.not-lost";
                default -> "";
            };
        }

        private String gone() {
            return where == Status.SOLD ? "custody.sold-before" : where == Status.GIVEN ? "custody.given-before" : "";
        }

        private String elsewhere() {
            return where == Status.ON_LOAN
                    ? "custody.lent-before"
                    : where == Status.CONSIGNED ? "custody.consigned-before" : "";
        }

        private void move(Event event) {
            switch (event.kind()) {
                case SOLD -> away(Status.SOLD, event);
                case GIVEN -> away(Status.GIVEN, event);
                case LENT -> moved(Status.ON_LOAN, event.party());
                case CONSIGNED -> moved(Status.CONSIGNED, event.party());
                case RETURNED -> moved(Status.IN_STOCK, null);
                case RESERVED -> reserved = true;
                case RELEASED -> reserved = false;
                case SECOND -> second = true;
                case LOST -> {
                    beforeLoss = where;
                    holderBeforeLoss = holder;
                    moved(Status.LOST, null);
                }
                case FOUND -> moved(beforeLoss, holderBeforeLoss);
                case DESTROYED -> moved(Status.DESTROYED, null);
                default -> throw new IllegalStateException(event.kind() + " decides nothing");
            }
        }

        private void away(Status status, Event event) {
            reserved = false;
            moved(status, event.party());
        }

        private void moved(Status to, @Nullable PartyId who) {
            where = to;
            holder = who;
        }

        @Nullable
        Status status() {
            if (decidedBy == null) {
                return null;
            }
            if (reserved && (where == Status.IN_STOCK || where == Status.CONSIGNED)) {
                return Status.RESERVED;
            }
            return second && where == Status.IN_STOCK ? Status.SECOND : where;
        }
    }
}
