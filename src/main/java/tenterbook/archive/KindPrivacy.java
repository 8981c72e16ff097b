package tenterbook.archive;

import java.util.List;
import java.util.Map;
import tenterbook.ledger.Privacy;

/**
 * What of each kind of record is private. A change here bears on revisions written after it: what was split once stays as
 * it was split.
 *
 * <p>Private are buyers and all others by name, addresses, prices, where a piece is kept, and free text that is likely to
 * speak of people. A board pair, a clamping and a sheet of labels have nothing of it. What is private nowhere stands on a
 * page or paper that goes out unless chosen, so a proof may show the rest.
 */
final class KindPrivacy {
    static final Privacy PARTY = new Privacy(true, List.of("*"), List.of("name", "contact"), Map.of());
    static final Privacy STUDIO = Privacy.of("contact", "postalAddress", "online", "phone", "responsible");
    static final Privacy CLOTH = Privacy.of("price", "supplier", "notes");
    static final Privacy LOT = Privacy.of("price", "supplier", "notes");
    static final Privacy PHOTO = Privacy.of("originalName", "notes");
    static final Privacy CALIBRATION = Privacy.of("by", "note");

    static final Privacy PIECE = new Privacy(
            false,
            List.of("holder", "place", "price", "notes", "events.*.party", "events.*.note", "events.*.price"),
            List.of(),
            Map.of("holder", List.of("place"), "events.*.party", List.of("events.*.note")));

    static final Privacy EXAMINATION = new Privacy(
            false,
            List.of("party", "examiner", "place", "handedOver", "received", "notes"),
            List.of(),
            Map.of(
                    "party", List.of("examiner"),
                    "handedOver.party", List.of("handedOver"),
                    "received.party", List.of("received")));

    /** The words of a schedule name the borrower, those of a tag may give the price. */
    static final Privacy ISSUED_PAPER = Privacy.of("words", "setting", "pieces.*.lines", "pieces.*.code");

    private KindPrivacy() {}
}
