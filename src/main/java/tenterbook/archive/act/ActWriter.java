package tenterbook.archive.act;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Ahead;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.NewIdentifier;
import tenterbook.archive.act.ActRequest.ActPiece;
import tenterbook.archive.arrival.PiecePhotographs;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.InputRefused;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.piece.Event;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.agreement.AgreedPiece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.agreement.AgreementId;
import tenterbook.piece.agreement.AgreementKind;
import tenterbook.piece.cost.SaleTax;
import tenterbook.piece.history.Act;
import tenterbook.piece.history.ActField;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Writes an act on one piece or several in one transaction: all of it or nothing. */
public final class ActWriter {
    private final Archive archive;
    private final Act act;
    private final ActRequest request;
    private final LocalDate today;

    /** @param today for the number of an agreement, and after which nothing has happened */
    public ActWriter(Archive archive, Act act, ActRequest request, LocalDate today) {
        this.archive = archive;
        this.act = act;
        this.request = request;
        this.today = today;
    }

    /**
     * What was written.
     *
     * @param party who is concerned, also a new one; null where nobody is recorded
     * @param agreement null where none was written
     */
    public record Done(
            List<PieceNumber> pieces,
            @Nullable PartyId party,
            @Nullable AgreementId agreement) {}

    /**
     * @throws InputRefused with a sentence for each piece to which it cannot have happened
     * @throws tenterbook.ledger.Conflict where a piece was saved by someone else in the same moment
     */
    public Done write() {
        Faults faults = new Faults();
        List<Saved<Piece>> before = pieces(faults);
        PartyId known = request.party();
        if (known != null && archive.party(known.value()).isEmpty()) {
            faults.add("party", Message.of("act.no-such-person", "found", known.value()));
        }
        Ahead.of(act.event(), request.when(), today).ifPresent(why -> faults.add("when", why));
        if (known != null && !request.newPerson().isEmpty()) {
            faults.add("newPerson", Message.of("act.party-twice"));
        }
        if (request.commission().recorded() && act.asks(ActField.COMMISSION) && !request.agreement()) {
            faults.add("commission", Message.of("act.commission-without-agreement"));
        }
        if (act.asks(ActField.PHOTOGRAPHS)) {
            checkPhotographs(faults);
        }
        if (!faults.isEmpty()) {
            throw new InputRefused(act.word(), faults);
        }
        PiecePhotographs added = PiecePhotographs.of(act.asks(ActField.PHOTOGRAPHS) ? request.photos() : List.of());
        return archive.ledger().write(archive.author(), ledger -> {
            PartyId party = known == null && !request.newPerson().isEmpty() ? newPerson(ledger) : known;
            boolean agreed = request.agreement() && act.asks(ActField.AGREEMENT);
            for (int i = 0; i < before.size(); i++) {
                Event event = event(request.pieces().get(i), party, agreed);
                added.add(
                        ledger,
                        before.get(i),
                        piece -> Act.after(piece, event),
                        act.word().inEnglish());
            }
            List<PieceNumber> numbers =
                    before.stream().map(piece -> piece.record().number()).toList();
            return new Done(numbers, party, agreed ? agreement(ledger, party, numbers) : null);
        });
    }

    private void checkPhotographs(Faults faults) {
        if (request.photos().isEmpty()) {
            faults.add("photos", Message.of("act.no-photograph"));
        }
        request.photos().stream()
                .filter(photo -> archive.ledger().find(Kinds.PHOTO, photo.hex()).isEmpty())
                .findFirst()
                .ifPresent(photo -> faults.add("photos", Message.of("act.no-such-photograph", "digest", photo.hex())));
    }

    /** Each piece as it is now, with a fault for each to which the event cannot happen. */
    private List<Saved<Piece>> pieces(Faults faults) {
        List<Saved<Piece>> pieces = new ArrayList<>();
        Set<PieceNumber> named = new LinkedHashSet<>();
        for (int i = 0; i < request.pieces().size(); i++) {
            ActPiece each = request.pieces().get(i);
            String at = "pieces." + i + ".piece";
            Optional<Saved<Piece>> found =
                    archive.ledger().find(Kinds.PIECE, each.piece().value());
            if (found.isEmpty()) {
                faults.add(at, Message.of("act.no-such-piece", "number", each.piece()));
            } else if (!named.add(found.get().record().number())) {
                faults.add(at, Message.of("act.piece-twice", "number", each.piece()));
            } else {
                try {
                    Act.refusal(found.get().record(), event(each, request.party(), false))
                            .ifPresent(why ->
                                    faults.add(at, Message.of("act.refused", "number", each.piece(), "why", why)));
                } catch (Refusal e) {
                    faults.add("pieces." + i + ".tax", e.explanation());
                }
                pieces.add(found.get());
            }
        }
        return pieces;
    }

    /** A value that is agreed stands in the agreement alone. */
    private Event event(ActPiece each, @Nullable PartyId party, boolean agreed) {
        return new Event(
                act.event(),
                request.when(),
                act.asks(ActField.UNTIL) ? request.until() : null,
                act.asks(ActField.PARTY) ? party : null,
                act.asks(ActField.PRICE) && !agreed ? each.price() : null,
                request.note(),
                act.asks(ActField.PLACE) ? request.place() : "",
                request.unsure(),
                act.asks(ActField.TAX) ? new SaleTax(request.taxWay(), request.taxRate(), each.tax()) : null);
    }

    private PartyId newPerson(LedgerTransaction ledger) {
        String id = NewIdentifier.of(
                request.newPerson(), "person", start -> ledger.idsEverUsed(Kinds.PARTY, start)::contains);
        Party party = new Party(new PartyId(id), request.newPerson(), "", "", "");
        ledger.create(Kinds.PARTY, party);
        return party.id();
    }

    /** @param numbers the first ones of the pieces asked for, in order */
    private AgreementId agreement(LedgerTransaction ledger, @Nullable PartyId party, List<PieceNumber> numbers) {
        AgreementId id = new AgreementId(Kinds.AGREEMENT_NUMBERS
                .next(start -> ledger.idsEverUsed(Kinds.AGREEMENT, start), today.getYear())
                .value());
        ledger.create(
                Kinds.AGREEMENT,
                new Agreement(
                        id,
                        act == Act.LEND ? AgreementKind.LOAN : AgreementKind.CONSIGNMENT,
                        party,
                        "",
                        null,
                        request.when(),
                        request.until(),
                        IntStream.range(0, numbers.size())
                                .mapToObj(i -> new AgreedPiece(
                                        numbers.get(i), request.pieces().get(i).price(), null, "", ""))
                                .toList(),
                        List.of(),
                        "",
                        request.commission(),
                        "",
                        "",
                        request.note()));
        return id;
    }
}
