package tenterbook.archive;

import java.util.List;
import java.util.Map;
import tenterbook.archive.field.Part;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.archive.record.IssuedPaperRecord;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.PhotoRecords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StudioRecords;
import tenterbook.ledger.revision.Privacy;

/**
 * What of each kind of record is private, and what goes with a person when that person is erased. Which fields are private stands
 * in their descriptions; a change there bears on revisions written after it: what was split once stays as it was split.
 *
 * <p>Private are buyers and all others by name, addresses, prices, where a piece is kept, and free text that is likely to
 * speak of people. A board pair, a clamping and a sheet of labels have nothing of it. What is private nowhere stands on a
 * page or paper that goes out unless chosen, so a proof may show the rest.
 */
final class KindPrivacy {
    static final Privacy PARTY =
            new Privacy(true, StudioRecords.PARTY.personal(), List.of("name", "contact"), Map.of());
    static final Privacy STUDIO = of(StudioRecords.STUDIO);
    static final Privacy CLOTH = of(MaterialRecords.CLOTH);
    static final Privacy LOT = of(MaterialRecords.LOT);
    static final Privacy PHOTO = of(PhotoRecords.PHOTO);
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

    /**
     * The words of a schedule name the borrower, those of a tag may give the price. The party of a schedule may also be a name as
     * typed; then it is found as a private text.
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
