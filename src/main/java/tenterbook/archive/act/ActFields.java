package tenterbook.archive.act;

import static tenterbook.archive.record.Measures.DATE;
import static tenterbook.archive.record.Measures.MONEY;
import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.PERCENT;

import tenterbook.archive.act.ActRequest.ActPiece;
import tenterbook.archive.field.Flag;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StoredCodes;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;

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
}
