package tenterbook.web.act;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.Saved;
import tenterbook.piece.Party;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.history.Act;
import tenterbook.web.Site;
import tenterbook.web.found.ChosenPieces;
import tenterbook.web.page.Address;

/**
 * What was recorded, and the papers that belong to it.
 *
 * @param party name of the person concerned; empty for none
 * @param receipt a text to copy; empty where nothing was sold
 */
public record ActDoneView(
        Act act,
        List<Piece> pieces,
        String party,
        @Nullable String partyAddress,
        @Nullable String agreement,
        List<Paper> papers,
        String receipt) {
    /** A paper that may be printed now. */
    public record Paper(String label, String address) {}

    static ActDoneView of(
            Site site, Act act, List<Saved<Piece>> saved, @Nullable String partyId, @Nullable String agreement) {
        List<Piece> pieces = saved.stream().map(Saved::record).toList();
        Party party = partyId == null ? null : site.archive().party(partyId).orElse(null);
        String name = party == null ? "" : party.title();
        return new ActDoneView(
                act,
                pieces,
                name,
                party == null ? null : "/people/" + Address.encoded(party.id().value()),
                agreement,
                act == Act.PHOTOGRAPH ? next(pieces) : papers(act, ChosenPieces.joined(saved), name, agreement),
                act == Act.SELL ? Receipt.ofLast(site, pieces, name) : "");
    }

    private static List<Paper> papers(Act act, String numbers, String party, @Nullable String agreement) {
        String pieces = "pieces=" + Address.encoded(numbers);
        Paper tag = new Paper(w("act.paper.tag"), "/print?kind=hang-tag&" + pieces);
        Paper certificate = new Paper(w("act.paper.certificate"), "/documents?kind=provenance-certificate&" + pieces);
        Paper condition = new Paper(w("act.paper.condition"), "/documents?kind=condition-report&" + pieces);
        String with = agreement != null
                ? "&agreement=" + Address.encoded(agreement)
                : party.isEmpty() ? "" : "&party=" + Address.encoded(party);
        return switch (act) {
            case SELL -> List.of(certificate, new Paper(w("act.paper.care"), "/print?kind=care-label&" + pieces));
            case GIVE -> List.of(certificate);
            case LEND ->
                List.of(
                        new Paper(w("act.paper.schedule"), "/documents?kind=loan-schedule&valued=1&" + pieces + with),
                        condition);
            case CONSIGN ->
                List.of(
                        new Paper(
                                w("act.paper.schedule"),
                                "/documents?kind=consignment-schedule&valued=1&" + pieces + with),
                        tag);
            case RETURN, WASH, REPAIR -> List.of(condition);
            case PRICE_ANEW, MARK_AS_SECOND -> List.of(tag);
            default -> List.of();
        };
    }

    public boolean photographed() {
        return act == Act.PHOTOGRAPH;
    }

    /** What is done with new photographs: the colours are named on the last one, and the piece is examined. */
    private static List<Paper> next(List<Piece> pieces) {
        List<Paper> next = new ArrayList<>();
        for (Piece piece : pieces) {
            String page = "/pieces/" + Address.encoded(piece.shown().value());
            List<PiecePhoto> photos = piece.photos();
            if (!photos.isEmpty()) {
                String last = photos.get(photos.size() - 1).photo().hex();
                next.add(new Paper(w("act.next.colours", "number", piece.shown()), page + "/photos/" + last));
            }
            next.add(new Paper(w("act.next.examine", "number", piece.shown()), page + "/condition/new"));
        }
        return next;
    }
}
