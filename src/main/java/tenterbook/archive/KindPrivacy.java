package tenterbook.archive;

import java.util.List;
import java.util.Map;
import tenterbook.archive.field.Part;
import tenterbook.archive.record.AgreementRecord;
import tenterbook.archive.record.ClampingRecord;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.archive.record.FairRecord;
import tenterbook.archive.record.IssuedPaperRecord;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.PhotoRecords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StudioRecords;
import tenterbook.ledger.revision.Privacy;

/**
 * The private fields of each kind of record, and what is erased along with a person. Which fields are private stands in their
 * descriptions; a change there applies to later revisions only.
 *
 * <p>Private are buyers and all others by name, addresses, prices, where a piece is kept, and free text that is likely to
 * mention people. A board pair and a sheet of labels have none of these. Private fields never leave on a page or
 * paper unless chosen, so a proof may show the rest.
 */
final class KindPrivacy {
    static final Privacy PARTY =
            new Privacy(true, StudioRecords.PARTY.personal(), List.of("name", "contact"), Map.of());
    static final Privacy STUDIO = of(StudioRecords.STUDIO);
    static final Privacy CLOTH = of(MaterialRecords.CLOTH);
    static final Privacy LOT = of(MaterialRecords.LOT);
    static final Privacy PHOTO = of(PhotoRecords.PHOTO);
    static final Privacy CLAMPING = of(ClampingRecord.CLAMPING);
    static final Privacy FAIR = of(FairRecord.FAIR);
    static final Privacy CALIBRATION = of(PhotoRecords.CALIBRATION);

    static final Privacy PIECE = new Privacy(
            false,
            PieceRecord.PIECE.personal(),
            List.of(),
            Map.of("holder", List.of("place"), "events.*.party", List.of("events.*.note")));

    static final Privacy EXAMINATION = new Privacy(
            false,
            ExaminationRecord.EXAMINATION.personal(),
            List.of(),
            Map.of(
                    "party", List.of("examiner"),
                    "handedOver.party", List.of("handedOver"),
                    "received.party", List.of("received")));

    /** The purpose and the terms of an agreement name who it is with. */
    static final Privacy AGREEMENT = new Privacy(
            false,
            AgreementRecord.AGREEMENT.personal(),
            List.of(),
            Map.of("party", List.of("purpose", "insurer", "creditLine", "terms", "notes")));

    /**
     * The words of a schedule name the borrower, those of a tag may have the price. The party of a schedule may also be a typed
     * name, which is found as a private text.
     */
    static final Privacy ISSUED_PAPER = new Privacy(
            false,
            IssuedPaperRecord.ISSUED_PAPER.personal(),
            List.of(),
            Map.of(
                    "settings.document.agreement.party",
                    List.of("settings.document.agreement.contact", "settings.document.agreement.terms")),
            List.of("pdf.digest"));

    private KindPrivacy() {}

    private static Privacy of(Part<?> part) {
        return new Privacy(false, part.personal(), List.of(), Map.of());
    }
}
