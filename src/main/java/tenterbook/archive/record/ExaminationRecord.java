package tenterbook.archive.record;

import static tenterbook.archive.record.Measures.CLOTH_LENGTH;
import static tenterbook.archive.record.Measures.DATE;
import static tenterbook.archive.record.Measures.quantity;
import static tenterbook.measure.Unit.MILLIMETRE;

import tenterbook.archive.field.Numeric;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Plain;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.ExaminationId;
import tenterbook.piece.condition.ExaminedPhoto;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.condition.PhotoMark;
import tenterbook.piece.condition.Signatory;
import tenterbook.piece.condition.ZoneSeen;

/** An examination of a piece and what was seen in it. */
public final class ExaminationRecord {
    private static final Part<ExaminedPhoto> PHOTO = Part.<ExaminedPhoto>of("examined-photo")
            .field("photo", Plain.DIGEST, ExaminedPhoto::photo)
            .key()
            .required()
            .blamed()
            .choice("view", ExaminationCodes.PHOTO_VIEW, ExaminedPhoto::view)
            .text("caption", ExaminedPhoto::caption)
            .built(v -> new ExaminedPhoto(v.get("photo"), v.get("view"), v.get("caption")));

    private static final Part<ZoneSeen> ZONE = Part.<ZoneSeen>of("examined-zone")
            .text("zone", ZoneSeen::zone)
            .key()
            .required()
            .blamed()
            .choice("seen", ExaminationCodes.SEEN, ZoneSeen::seen)
            .text("note", ZoneSeen::note)
            .built(v -> new ZoneSeen(v.get("zone"), v.get("seen"), v.get("note")));

    private static final Part<PhotoMark> MARK = Part.<PhotoMark>of("photo-mark")
            .field("photo", Plain.DIGEST, PhotoMark::photo)
            .required()
            .field("left", Numeric.DECIMAL, PhotoMark::left)
            .required()
            .blamed()
            .field("top", Numeric.DECIMAL, PhotoMark::top)
            .required()
            .field("right", Numeric.DECIMAL, PhotoMark::right)
            .field("bottom", Numeric.DECIMAL, PhotoMark::bottom)
            .built(v -> new PhotoMark(
                    v.get("photo"), v.get("left", -1.0), v.get("top", -1.0), v.get("right"), v.get("bottom")));

    public static final Part<Observation> OBSERVATION = Part.<Observation>of("observation")
            .field("number", Numeric.WHOLE, Observation::number)
            .key()
            .required()
            .text("what", Observation::what)
            .required()
            .blamed()
            .text("zone", Observation::zone)
            .text("place", Observation::place)
            .field("extent", quantity(MILLIMETRE), Observation::extent)
            .field("across", quantity(MILLIMETRE), Observation::across)
            .choice("severity", ExaminationCodes.SEVERITY, Observation::severity)
            .choice("stability", ExaminationCodes.STABILITY, Observation::stability)
            .choice("standing", ExaminationCodes.STANDING, Observation::standing)
            .text("note", Observation::note)
            .list("marks", MARK, Observation::marks)
            .built(v -> new Observation(
                    v.get("number", 0),
                    v.get("what"),
                    v.get("zone"),
                    v.get("place"),
                    v.get("extent"),
                    v.get("across"),
                    v.get("severity"),
                    v.get("stability"),
                    v.get("standing"),
                    v.get("note"),
                    v.get("marks")));

    private static final Part<Signatory> SIGNATORY = Part.<Signatory>of("signatory")
            .field("party", Plain.identifier(PartyId::new), Signatory::party)
            .text("name", Signatory::name)
            .field("when", DATE, Signatory::when)
            .built(v -> new Signatory(v.get("party"), v.get("name"), v.get("when")));

    public static final Part<Examination> EXAMINATION = Part.<Examination>of("examination")
            .field("id", Plain.identifier(ExaminationId::new), Examination::id)
            .required()
            .key()
            .field("piece", Plain.identifier(PieceNumber::new), Examination::piece)
            .required()
            .field("when", DATE, Examination::when)
            .text("place", Examination::place)
            .personal()
            .field("party", Plain.identifier(PartyId::new), Examination::party)
            .personal()
            .text("examiner", Examination::examiner)
            .personal()
            .choice("reason", ExaminationCodes.REASON, Examination::reason)
            .text("means", Examination::means)
            .choice("overall", ExaminationCodes.OVERALL, Examination::overall)
            .text("summary", Examination::summary)
            .field("length", CLOTH_LENGTH, Examination::length)
            .field("width", CLOTH_LENGTH, Examination::width)
            .list("photos", PHOTO, Examination::photos)
            .blamed()
            .list("zones", ZONE, Examination::zones)
            .list("observations", OBSERVATION, Examination::observations)
            .text("handling", Examination::handling)
            .text("light", Examination::light)
            .text("packing", Examination::packing)
            .field("earlier", Plain.identifier(ExaminationId::new), Examination::earlier)
            .field("handedOver", SIGNATORY, Examination::handedOver)
            .personal()
            .field("received", SIGNATORY, Examination::received)
            .personal()
            .text("notes", Examination::notes)
            .personal()
            .built(v -> new Examination(
                    v.get("id"),
                    v.get("piece"),
                    v.get("when"),
                    v.get("place"),
                    v.get("party"),
                    v.get("examiner"),
                    v.get("reason"),
                    v.get("means"),
                    v.get("overall"),
                    v.get("summary"),
                    v.get("length"),
                    v.get("width"),
                    v.get("photos"),
                    v.get("zones"),
                    v.get("observations"),
                    v.get("handling"),
                    v.get("light"),
                    v.get("packing"),
                    v.get("earlier"),
                    v.get("handedOver"),
                    v.get("received"),
                    v.get("notes")));

    private ExaminationRecord() {}
}
