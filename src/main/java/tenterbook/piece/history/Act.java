package tenterbook.piece.history;

import static tenterbook.piece.history.ActField.AGREEMENT;
import static tenterbook.piece.history.ActField.COMMISSION;
import static tenterbook.piece.history.ActField.PARTY;
import static tenterbook.piece.history.ActField.PHOTOGRAPHS;
import static tenterbook.piece.history.ActField.PLACE;
import static tenterbook.piece.history.ActField.PRICE;
import static tenterbook.piece.history.ActField.TAX;
import static tenterbook.piece.history.ActField.UNTIL;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;
import tenterbook.piece.Status;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a maker does with finished pieces, or finds out about them. Each writes one event and what follows from it. */
public enum Act implements Worded {
    SELL("sell", EventKind.SOLD, PARTY, PRICE, TAX, PLACE),
    RESERVE("reserve", EventKind.RESERVED, PARTY, UNTIL),
    RELEASE("release", EventKind.RELEASED),
    LEND("lend", EventKind.LENT, PARTY, UNTIL, PLACE, PRICE, AGREEMENT),
    CONSIGN("consign", EventKind.CONSIGNED, PARTY, UNTIL, PLACE, PRICE, COMMISSION, AGREEMENT),
    RETURN("return", EventKind.RETURNED, PLACE),
    GIVE("give", EventKind.GIVEN, PARTY, PLACE),
    MOVE("move", EventKind.MOVED, PLACE),
    SHOW("show", EventKind.SHOWN, PARTY, UNTIL, PLACE),
    PRICE_ANEW("price", EventKind.PRICED, PRICE),
    PHOTOGRAPH("photograph", EventKind.PHOTOGRAPHED, PARTY, PHOTOGRAPHS),
    WASH("wash", EventKind.WASHED),
    REPAIR("repair", EventKind.MENDED, PARTY),
    MARK_AS_SECOND("second", EventKind.SECOND, PRICE),
    LOSE("lose", EventKind.LOST),
    FIND("find", EventKind.FOUND, PLACE),
    DESTROY("destroy", EventKind.DESTROYED);

    /** After these the old place is no longer true. */
    private static final Set<EventKind> LEAVES_ITS_PLACE = Set.of(
            EventKind.SOLD,
            EventKind.LENT,
            EventKind.CONSIGNED,
            EventKind.RETURNED,
            EventKind.GIVEN,
            EventKind.MOVED,
            EventKind.LOST,
            EventKind.FOUND,
            EventKind.DESTROYED);

    /** After these the price of the event is the price asked. */
    private static final Set<EventKind> ASKS_ITS_PRICE = Set.of(EventKind.PRICED, EventKind.SECOND);

    private final String word;
    private final EventKind event;
    private final Set<ActField> asks;

    Act(String word, EventKind event, ActField... asks) {
        this.word = word;
        this.event = event;
        this.asks = Set.of(asks);
    }

    public static Optional<Act> of(String word) {
        return Arrays.stream(values()).filter(act -> act.word.equals(word)).findFirst();
    }

    /** The act that writes such an event; empty where none does. */
    public static Optional<Act> writing(@Nullable EventKind kind) {
        return Arrays.stream(values()).filter(act -> act.event == kind).findFirst();
    }

    public EventKind event() {
        return event;
    }

    public boolean asks(ActField field) {
        return asks.contains(field);
    }

    /** Whether it may be done to a piece as it stands. */
    public boolean possible(Piece piece) {
        return refusal(piece, Event.of(event, PartialDate.UNRECORDED)).isEmpty();
    }

    /** Why the event cannot have happened to the piece as it is recorded; empty where it can. */
    public static Optional<Message> refusal(Piece piece, Event event) {
        Optional<Message> early = beforeFinished(piece, event);
        return early.isPresent() ? early : Custody.refusal(allEvents(piece), event);
    }

    /** That the event would have happened before the piece was finished; empty where it would not, or is marked uncertain. */
    public static Optional<Message> beforeFinished(Piece piece, Event event) {
        boolean before = !event.unsure()
                && event.when().to() != null
                && piece.finished().from() != null
                && event.when().to().isBefore(piece.finished().from());
        return before ? Optional.of(Message.of("custody.before-finished", "day", piece.finished())) : Optional.empty();
    }

    /**
     * The piece after the event. Where the event decides the status, a typed one becomes an event without a day before it, so
     * that from here on events alone say where the piece is.
     */
    public static Piece after(Piece piece, Event event) {
        boolean decides = Custody.decides(event.kind());
        List<Event> all = new ArrayList<>(decides ? allEvents(piece) : piece.events());
        all.add(event);
        boolean newest = Custody.inTime(all).get(all.size() - 1) == event;
        boolean placed = newest
                && (LEAVES_ITS_PLACE.contains(event.kind()) || !event.place().isEmpty());
        boolean priced = newest && event.price() != null && ASKS_ITS_PRICE.contains(event.kind());
        return piece.withEvents(
                all,
                decides ? null : piece.status(),
                decides ? null : piece.holder(),
                placed ? event.place() : piece.place(),
                priced ? event.price() : piece.price());
    }

    /**
     * The piece with another event in the place of one; its own place and price follow where they came from that one, and status and
     * holder as an older program typed them where its events gave the same.
     */
    public static Piece corrected(Piece piece, int at, Event other) {
        Event was = piece.events().get(at);
        Custody before = Custody.of(piece.events());
        List<Event> all = new ArrayList<>(piece.events());
        all.set(at, other);
        boolean placed = !was.place().isEmpty() && was.place().equals(piece.place());
        boolean priced = ASKS_ITS_PRICE.contains(was.kind())
                && was.price() != null
                && was.price().equals(piece.price());
        return piece.withEvents(
                all,
                piece.status() == before.status() ? null : piece.status(),
                Objects.equals(piece.holder(), before.holder()) ? null : piece.holder(),
                placed ? other.place() : piece.place(),
                priced ? other.price() : piece.price());
    }

    /** The events of a piece and, where its typed status is another than they give, one without a day that brings it. */
    public static List<Event> allEvents(Piece piece) {
        Custody now = Custody.of(piece.events());
        EventKind kind =
                piece.status() == null || piece.status() == now.status() ? null : kind(piece.status(), now.status());
        if (kind == null) {
            return piece.events();
        }
        List<Event> all = new ArrayList<>(piece.events());
        all.add(new Event(kind, null, null, piece.holder(), null, "", piece.place(), false));
        return all;
    }

    /** The act that gives a piece this status; empty where it needs none. */
    public static Optional<Act> bringing(Status status, Piece piece) {
        return writing(kind(status, Custody.of(piece.events()).status()));
    }

    /** The event that brings a typed status; null where none is needed. */
    private static @Nullable EventKind kind(Status typed, @Nullable Status byEvents) {
        return switch (typed) {
            case SOLD -> EventKind.SOLD;
            case GIVEN -> EventKind.GIVEN;
            case CONSIGNED -> EventKind.CONSIGNED;
            case ON_LOAN -> EventKind.LENT;
            case HANGING -> EventKind.SHOWN;
            case SECOND -> EventKind.SECOND;
            case LOST -> EventKind.LOST;
            case DESTROYED -> EventKind.DESTROYED;
            case RESERVED -> EventKind.RESERVED;
            case IN_STOCK, KEPT -> byEvents == null || byEvents == Status.IN_STOCK ? null : EventKind.RETURNED;
        };
    }

    @Override
    public Message word() {
        return Message.of("act." + word);
    }

    /** As in an address. */
    @Override
    public String toString() {
        return word;
    }
}
