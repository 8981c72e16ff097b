package tenterbook.sample;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import tenterbook.measure.Digest;
import tenterbook.measure.Unit;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.ExaminationId;
import tenterbook.piece.condition.ExaminedPhoto;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.condition.Overall;
import tenterbook.piece.condition.PhotoMark;
import tenterbook.piece.condition.PhotoView;
import tenterbook.piece.condition.Reason;
import tenterbook.piece.condition.Seen;
import tenterbook.piece.condition.Severity;
import tenterbook.piece.condition.Signatory;
import tenterbook.piece.condition.Stability;
import tenterbook.piece.condition.Standing;
import tenterbook.piece.condition.ZoneSeen;

/** Reads the sample studio's examinations. */
final class SampleExaminations {
    private SampleExaminations() {}

    /** @param photo finds a photograph by the name of its file */
    static Examination examination(Entered e, Function<String, Digest> photo) {
        return new Examination(
                new ExaminationId(e.text("id")),
                new PieceNumber(e.text("piece")),
                e.date("when"),
                e.text("place"),
                e.named("party", PartyId::new),
                e.text("examiner"),
                e.choice("reason", Reason.values()),
                e.text("means"),
                e.choice("overall", Overall.values()),
                e.text("summary"),
                e.quantity("length", Unit.CENTIMETRE),
                e.quantity("width", Unit.CENTIMETRE),
                e.each(
                        "photos",
                        seen -> new ExaminedPhoto(
                                photo.apply(seen.text("file")),
                                seen.choice("view", PhotoView.values()),
                                seen.text("caption"))),
                e.each(
                        "zones",
                        zone -> new ZoneSeen(zone.text("zone"), zone.choice("seen", Seen.values()), zone.text("note"))),
                e.each("observations", seen -> observation(seen, photo)),
                e.text("handling"),
                e.text("light"),
                e.text("packing"),
                e.named("earlier", ExaminationId::new),
                signatory(e, "handedOver"),
                signatory(e, "received"),
                e.text("notes"));
    }

    private static Observation observation(Entered e, Function<String, Digest> photo) {
        return new Observation(
                e.number("number").intValue(),
                e.text("what"),
                e.text("zone"),
                e.text("place"),
                e.quantity("extent", Unit.MILLIMETRE),
                e.quantity("across", Unit.MILLIMETRE),
                e.choice("severity", Severity.values()),
                e.choice("stability", Stability.values()),
                e.choice("standing", Standing.values()),
                e.text("note"),
                e.each("marks", mark -> mark(mark, photo)));
    }

    /** Two parts of the picture's width and height make a point, four an area. */
    private static PhotoMark mark(Entered e, Function<String, Digest> photo) {
        List<Double> at = e.words("at").stream().map(Double::valueOf).collect(Collectors.toList());
        boolean area = at.size() == 4;
        return new PhotoMark(
                photo.apply(e.text("file")), at.get(0), at.get(1), area ? at.get(2) : null, area ? at.get(3) : null);
    }

    private static Signatory signatory(Entered e, String name) {
        return e.has(name)
                ? e.inner(name)
                        .read(one ->
                                new Signatory(one.named("party", PartyId::new), one.text("name"), one.date("when")))
                : Signatory.NOBODY;
    }
}
