package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.DATE;

import tenterbook.archive.field.Flag;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.fair.Fair;
import tenterbook.piece.fair.FairId;
import tenterbook.piece.fair.FairPiece;
import tenterbook.piece.fair.FairTask;

/** A fair, exhibition or market with its pieces and its checklist. */
public final class FairRecord {
    private static final Part<FairPiece> PIECE = Part.<FairPiece>of("fair-piece")
            .field("piece", Plain.identifier(PieceNumber::new), FairPiece::piece)
            .key()
            .required()
            .blamed()
            .text("box", FairPiece::box)
            .text("note", FairPiece::note)
            .personal()
            .built(v -> new FairPiece(v.get("piece"), v.get("box"), v.get("note")));

    private static final Part<FairTask> TASK = Part.<FairTask>of("fair-task")
            .text("text", FairTask::text)
            .required()
            .personal()
            .blamed()
            .field("done", Flag.YES_ONLY, FairTask::done)
            .built(v -> new FairTask(v.get("text"), v.get("done", false)));

    public static final Part<Fair> FAIR = Part.<Fair>of("fair")
            .field("id", Plain.identifier(FairId::new), Fair::id)
            .required()
            .key()
            .choice("kind", StoredCodes.FAIR_KIND, Fair::kind)
            .required()
            .text("name", Fair::name)
            .required()
            .blamed()
            .text("place", Fair::place)
            .text("soldIn", Fair::soldIn)
            .field("from", DATE, Fair::from)
            .field("until", DATE, Fair::until)
            .list("pieces", PIECE, Fair::pieces)
            .list("tasks", TASK, Fair::tasks)
            .text("priceStatement", Fair::priceStatement)
            .choice("purpose", StoredCodes.CUSTOMS_PURPOSE, Fair::purpose)
            .text("notes", Fair::notes)
            .personal()
            .built(v -> new Fair(
                    v.get("id"),
                    v.get("kind"),
                    v.get("name"),
                    v.get("place"),
                    v.get("soldIn"),
                    v.get("from"),
                    v.get("until"),
                    v.get("pieces"),
                    v.get("tasks"),
                    v.get("priceStatement"),
                    v.get("purpose"),
                    v.get("notes")));

    private FairRecord() {}
}
