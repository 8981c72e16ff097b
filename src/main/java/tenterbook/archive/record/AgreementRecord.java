package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.DATE;
import static tenterbook.archive.record.Measures.MONEY;
import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.PERCENT;

import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.agreement.AgreedPiece;
import tenterbook.piece.agreement.Agreement;
import tenterbook.piece.agreement.AgreementId;
import tenterbook.piece.agreement.Payment;

/** A loan or consignment with its pieces. */
public final class AgreementRecord {
    private static final Part<AgreedPiece> PIECE = Part.<AgreedPiece>of("agreed-piece")
            .field("piece", Plain.identifier(PieceNumber::new), AgreedPiece::piece)
            .key()
            .required()
            .blamed()
            .field("value", MONEY, AgreedPiece::value)
            .personal()
            .field("floor", MONEY, AgreedPiece::floor)
            .personal()
            .text("theirNumber", AgreedPiece::theirNumber)
            .text("note", AgreedPiece::note)
            .personal()
            .built(v -> new AgreedPiece(
                    v.get("piece"), v.get("value"), v.get("floor"), v.get("theirNumber"), v.get("note")));

    private static final Part<Payment> PAYMENT = Part.<Payment>of("payment")
            .choice("kind", StoredCodes.PAYMENT_KIND, Payment::kind)
            .required()
            .field("when", DATE, Payment::when)
            .field("amount", MONEY, Payment::amount)
            .required()
            .personal()
            .blamed()
            .field("tax", MONEY, Payment::tax)
            .personal()
            .text("note", Payment::note)
            .personal()
            .built(v -> new Payment(v.get("kind"), v.get("when"), v.get("amount"), v.get("tax"), v.get("note")));

    public static final Part<Agreement> AGREEMENT = Part.<Agreement>of("agreement")
            .field("id", Plain.identifier(AgreementId::new), Agreement::id)
            .required()
            .key()
            .choice("kind", StoredCodes.AGREEMENT_KIND, Agreement::kind)
            .required()
            .field("party", Plain.identifier(PartyId::new), Agreement::party)
            .personal()
            .text("purpose", Agreement::purpose)
            .personal()
            .blamed()
            .field("agreed", DATE, Agreement::agreed)
            .field("from", DATE, Agreement::from)
            .field("until", DATE, Agreement::until)
            .list("pieces", PIECE, Agreement::pieces)
            .list("payments", PAYMENT, Agreement::payments)
            .text("insurer", Agreement::insurer)
            .personal()
            .field("commission", quantity(PERCENT), Agreement::commission)
            .text("creditLine", Agreement::creditLine)
            .personal()
            .text("terms", Agreement::terms)
            .personal()
            .text("notes", Agreement::notes)
            .personal()
            .built(v -> new Agreement(
                    v.get("id"),
                    v.get("kind"),
                    v.get("party"),
                    v.get("purpose"),
                    v.get("agreed"),
                    v.get("from"),
                    v.get("until"),
                    v.get("pieces"),
                    v.get("payments"),
                    v.get("insurer"),
                    v.get("commission"),
                    v.get("creditLine"),
                    v.get("terms"),
                    v.get("notes")));

    private AgreementRecord() {}
}
