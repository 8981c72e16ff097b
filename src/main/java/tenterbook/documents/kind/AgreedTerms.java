package tenterbook.documents.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.documents.DocumentKind;
import tenterbook.documents.DocumentSettings;
import tenterbook.ledger.Saved;
import tenterbook.measure.DateText;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.agreement.AgreedPiece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.agreement.AgreementKind;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * What the parties of a schedule agreed: as typed, otherwise as the agreement records it, otherwise as the pieces' events with
 * the same party do. What was agreed with one party never stands on the paper of another.
 *
 * @param agreement the record it rests on; null where there is none
 * @param party the other party in the archive; null where it is typed or nobody is named
 * @param name of the other party as printed; empty where nobody is named
 * @param contact printed; empty where it is not recorded or not chosen
 * @param from as printed; empty where not known, as are the following
 */
record AgreedTerms(
        @Nullable Agreement agreement,
        @Nullable PartyId party,
        String name,
        String contact,
        String from,
        String until,
        String insurer,
        String creditLine,
        String terms,
        EventKind event) {

    /** @throws IllegalArgumentException where the agreement chosen is not in the archive, or is of the other kind */
    static AgreedTerms of(Archive archive, List<DocumentFacts> subject, DocumentSettings request) {
        boolean loan = request.kind() == DocumentKind.LOAN_SCHEDULE;
        EventKind event = loan ? EventKind.LENT : EventKind.CONSIGNED;
        DocumentSettings.Agreement typed = request.agreement();
        Optional<Party> named = party(archive, typed.party());
        Agreement agreement = agreement(
                archive,
                subject,
                typed,
                named.map(Party::id).orElse(null),
                loan ? AgreementKind.LOAN : AgreementKind.CONSIGNMENT);
        PartyId id = named.map(Party::id).orElse(null);
        if (id == null && typed.party().isEmpty()) {
            id = agreement != null
                    ? agreement.party()
                    : common(subject, event, null, Event::party).orElse(null);
        }
        Optional<Party> party = Optional.ofNullable(id).flatMap(each -> archive.party(each.value()));
        String printed = party.map(Party::title).orElse(id == null ? typed.party() : id.value());
        boolean anybody = id != null || typed.party().isEmpty();
        PartyId with = id;
        return new AgreedTerms(
                agreement,
                id,
                printed,
                typed.contact() ? party.map(Party::contact).orElse("") : "",
                first(
                        typed.from(),
                        agreement == null ? null : agreement.from(),
                        anybody ? common(subject, event, with, Event::when).orElse(null) : null),
                first(
                        typed.until(),
                        agreement == null ? null : agreement.until(),
                        anybody ? common(subject, event, with, Event::until).orElse(null) : null),
                typed.insurer().isEmpty() && agreement != null ? agreement.insurer() : typed.insurer(),
                agreement == null ? "" : agreement.creditLine(),
                typed.terms().isEmpty() && agreement != null ? agreement.terms() : typed.terms(),
                event);
    }

    private static Optional<Party> party(Archive archive, String typed) {
        return archive.ledger().all(Kinds.PARTY).stream()
                .map(Saved::record)
                .filter(party -> party.name().equalsIgnoreCase(typed)
                        || party.title().equalsIgnoreCase(typed)
                        || party.id().value().equals(typed))
                .findFirst();
    }

    /** The one chosen; otherwise the newest of this kind, with this party where one is typed, that covers all pieces. */
    private static @Nullable Agreement agreement(
            Archive archive,
            List<DocumentFacts> subject,
            DocumentSettings.Agreement typed,
            @Nullable PartyId named,
            AgreementKind kind) {
        if (!typed.id().isEmpty()) {
            Agreement chosen = archive.ledger()
                    .find(Kinds.AGREEMENT, typed.id())
                    .map(Saved::record)
                    .orElseThrow(() -> Refusal.of("document.schedule.no-agreement", "id", typed.id()));
            if (chosen.kind() != kind) {
                throw Refusal.of("document.schedule.other-kind", "id", typed.id(), "kind", chosen.kind());
            }
            return chosen;
        }
        List<PieceNumber> numbers = subject.stream().map(DocumentFacts::number).toList();
        return archive.agreementsOf(numbers.get(0)).stream()
                .filter(each -> each.kind() == kind)
                .filter(each -> typed.party().isEmpty() || named != null && named.equals(each.party()))
                .filter(each ->
                        numbers.stream().allMatch(number -> each.piece(number).isPresent()))
                .reduce((earlier, later) -> later)
                .orElse(null);
    }

    /** What the newest events of this kind, with this party where it is known, record alike for every piece. */
    private static <T> Optional<T> common(
            List<DocumentFacts> subject, EventKind kind, @Nullable PartyId with, Function<Event, T> fact) {
        List<T> found = new ArrayList<>();
        for (DocumentFacts each : subject) {
            Optional<Event> event = newest(each, kind, with);
            if (event.isEmpty() || fact.apply(event.get()) == null) {
                return Optional.empty();
            }
            found.add(fact.apply(event.get()));
        }
        return found.stream().distinct().count() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    private static Optional<Event> newest(DocumentFacts piece, EventKind kind, @Nullable PartyId with) {
        return piece.piece().events().stream()
                .filter(event -> event.kind() == kind)
                .filter(event -> with == null || with.equals(event.party()))
                .reduce((earlier, later) -> later);
    }

    private static String first(String typed, @Nullable PartialDate agreed, @Nullable PartialDate noted) {
        if (!typed.isEmpty()) {
            return typedDay(typed);
        }
        if (agreed != null && agreed.recorded()) {
            return agreed.onPaper();
        }
        return noted != null && noted.recorded() ? noted.onPaper() : "";
    }

    /** A whole day in the form of the paper's other dates; anything else as typed, as in 'three months'. */
    private static String typedDay(String typed) {
        try {
            return DateText.read(typed).onPaper();
        } catch (Refusal e) {
            return typed;
        }
    }

    /** What is agreed for a piece with this party; empty where nothing is. */
    Optional<Money> value(DocumentFacts piece) {
        if (agreement != null) {
            return agreement.piece(piece.number()).map(AgreedPiece::value);
        }
        return party == null ? Optional.empty() : newest(piece, event, party).map(Event::price);
    }

    /** The lowest price at which the other party may sell a piece; empty where none is agreed, and in a loan. */
    Optional<Money> floor(DocumentFacts piece) {
        return consigned().flatMap(of -> of.piece(piece.number())).map(AgreedPiece::floor);
    }

    /** What the other party keeps of the price of a sale; empty where it is not recorded, and in a loan. */
    Optional<Quantity> commission() {
        return consigned().map(Agreement::commission).filter(Quantity::recorded);
    }

    private Optional<Agreement> consigned() {
        return Optional.ofNullable(agreement).filter(of -> of.kind() == AgreementKind.CONSIGNMENT);
    }

    /** The other party's own number for a piece; empty where not recorded. */
    String theirNumber(DocumentFacts piece) {
        return agreement == null
                ? ""
                : agreement.piece(piece.number()).map(AgreedPiece::theirNumber).orElse("");
    }

    /** What must be known before the schedule may be issued and is not. */
    List<Written> lacking(List<DocumentFacts> subject, DocumentSettings request) {
        List<Written> lacking = new ArrayList<>();
        if (name.isEmpty()) {
            lacking.add(Message.of("document.schedule.lacks-party"));
        }
        if (from.isEmpty()) {
            lacking.add(Message.of("document.schedule.lacks-from"));
        }
        if (until.isEmpty() && event == EventKind.LENT) {
            lacking.add(Message.of("document.schedule.lacks-until"));
        }
        if (request.disclosure().values()) {
            subject.stream()
                    .filter(each -> value(each).isEmpty())
                    .map(this::noValue)
                    .forEach(lacking::add);
        }
        return lacking;
    }

    /** Names the agreement where there is one, since it is there that the value is to be recorded. */
    private Message noValue(DocumentFacts piece) {
        return agreement == null
                ? Message.of("document.schedule.lacks-value", "piece", piece.shown())
                : Message.of("document.schedule.lacks-value-in", "piece", piece.shown(), "agreement", agreement.id());
    }
}
