package tenterbook.archive.act;

import static tenterbook.archive.record.Measures.DATE;
import static tenterbook.archive.record.Measures.MONEY;
import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.PERCENT;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.archive.act.ActRequest.ActPiece;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Field;
import tenterbook.archive.field.Flag;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StoredCodes;
import tenterbook.piece.Event;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.history.Act;
import tenterbook.piece.history.ActField;
import tenterbook.words.Message;

/** The fields of an act, as its form and a program send them. An act is not stored: what it writes is. */
public final class ActFields {
    private static final Part<ActPiece> PIECE = Part.<ActPiece>of("act-piece")
            .field("piece", Plain.identifier(PieceNumber::new), ActPiece::piece)
            .key()
            .required()
            .blamed()
            .field("price", MONEY, ActPiece::price)
            .field("tax", MONEY, ActPiece::tax)
            .built(v -> new ActPiece(v.get("piece"), v.get("price"), v.get("tax")));

    public static final Part<ActRequest> ACT = Part.<ActRequest>of("act")
            .list("pieces", PIECE, ActRequest::pieces)
            .required()
            .field("when", DATE, ActRequest::when)
            .field("until", DATE, ActRequest::until)
            .field("party", Plain.identifier(PartyId::new), ActRequest::party)
            .text("newPerson", ActRequest::newPerson)
            .text("place", ActRequest::place)
            .field("commission", quantity(PERCENT), ActRequest::commission)
            .field("agreement", Flag.YES_ONLY, ActRequest::agreement)
            .text("note", ActRequest::note)
            .blamed()
            .field("unsure", Flag.YES_ONLY, ActRequest::unsure)
            .choice("taxWay", StoredCodes.TAX_WAY, ActRequest::taxWay)
            .field("taxRate", quantity(PERCENT), ActRequest::taxRate)
            .list("photos", Plain.DIGEST, ActRequest::photos)
            .built(v -> new ActRequest(
                    v.get("pieces"),
                    v.get("when"),
                    v.get("until"),
                    v.get("party"),
                    v.get("newPerson"),
                    v.get("place"),
                    v.get("commission"),
                    v.get("agreement", false),
                    v.get("note"),
                    v.get("unsure", false),
                    v.get("taxWay"),
                    v.get("taxRate"),
                    v.get("photos")));

    public static final Part<Correction> CORRECTION = Part.<Correction>of("correction")
            .field("piece", Plain.identifier(PieceNumber::new), Correction::piece)
            .required()
            .field("was", PieceRecord.EVENT, Correction::was)
            .required()
            .field("as", PieceRecord.EVENT, Correction::as)
            .required()
            .text("reason", Correction::reason)
            .required()
            .built(v -> new Correction(v.get("piece"), v.get("was"), v.get("as"), v.get("reason")));

    private ActFields() {}

    /** Adds a fault for each field of a request that the act does not ask, as for a commission sent with a sale. */
    public static void checkAsked(Act act, ObjectNode sent, Faults faults) {
        String asked = asked(
                act,
                Stream.concat(
                        ACT.fields().stream().map(Field::name),
                        PIECE.fields().stream().map(field -> "pieces." + field.name())));
        checkAsked(act, sent, "", asked, faults);
        JsonNode rows = sent.path("pieces");
        for (int i = 0; i < rows.size(); i++) {
            checkAsked(act, rows.get(i), "pieces." + i + ".", asked, faults);
        }
    }

    /** As of a request, of an event that is put right; a field that it had already may stay or be put right. */
    static void checkAsked(Event was, Event as, Faults faults) {
        ObjectNode held = PieceRecord.EVENT.write(was);
        ObjectNode added = PieceRecord.EVENT.write(as);
        held.fieldNames().forEachRemaining(added::remove);
        Act.writing(as.kind())
                .ifPresent(act -> checkAsked(
                        act,
                        added,
                        "as.",
                        asked(act, PieceRecord.EVENT.fields().stream().map(Field::name)),
                        faults));
    }

    private static void checkAsked(Act act, JsonNode sent, String at, String asked, Faults faults) {
        sent.properties().stream()
                .filter(field -> !field.getValue().isNull() && !asks(act, field.getKey()))
                .forEach(field ->
                        faults.add(at + field.getKey(), Message.of("act.not-asked", "act", act, "fields", asked)));
    }

    /** Whether the form for putting the event right has the field. */
    public static boolean offers(Event event, String field) {
        return PieceRecord.EVENT.write(event).has(field)
                || Act.writing(event.kind()).map(act -> asks(act, field)).orElse(true);
    }

    private static String asked(Act act, Stream<String> names) {
        return names.filter(name -> asks(act, name.substring(name.indexOf('.') + 1)))
                .collect(Collectors.joining(", "));
    }

    private static boolean asks(Act act, String field) {
        return switch (field) {
            case "party", "newPerson" -> act.asks(ActField.PARTY);
            case "until" -> act.asks(ActField.UNTIL);
            case "place" -> act.asks(ActField.PLACE);
            case "price" -> act.asks(ActField.PRICE);
            case "tax", "taxWay", "taxRate" -> act.asks(ActField.TAX);
            case "commission" -> act.asks(ActField.COMMISSION);
            case "agreement" -> act.asks(ActField.AGREEMENT);
            case "photos" -> act.asks(ActField.PHOTOGRAPHS);
            default -> true;
        };
    }
}
