package tenterbook.piece.condition;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.DateText;
import tenterbook.measure.Digest;
import tenterbook.measure.QuantityText;
import tenterbook.measure.Unit;
import tenterbook.piece.PartyId;
import tenterbook.piece.PieceNumber;

/** Examinations to try things with, of a piece of the invented studio. */
public final class Reports {
    public static final Digest FRONT = new Digest("a".repeat(64));
    public static final Digest BACK = new Digest("b".repeat(64));

    private Reports() {}

    public static Observation seen(
            int number, String what, String extent, ChangeSinceLast standing, PhotoMark... marks) {
        return new Observation(
                number,
                what,
                "front",
                "",
                QuantityText.read(extent, Unit.MILLIMETRE),
                null,
                Severity.SLIGHT,
                Stability.STABLE,
                standing,
                "",
                List.of(marks));
    }

    public static Examination of(String id, String when, String earlier, Observation... observations) {
        return judged(Overall.GOOD, id, when, earlier, observations);
    }

    static Examination judged(
            @Nullable Overall overall, String id, String when, String earlier, Observation... observations) {
        return new Examination(
                new ExaminationId(id),
                new PieceNumber("V24-013"),
                DateText.read(when),
                "Porto Sarelho",
                new PartyId("museu-do-sarelho"),
                "Tomé Quarral",
                Reason.BEFORE_LOAN,
                "by eye, raking light",
                overall,
                "Sound; two small marks.",
                QuantityText.read("140 cm", Unit.CENTIMETRE),
                QuantityText.read("forgot", Unit.CENTIMETRE),
                List.of(
                        new ExaminedPhoto(FRONT, PhotoView.FRONT, "whole"),
                        new ExaminedPhoto(BACK, PhotoView.BACK, "")),
                List.of(
                        new ZoneSeen("front", ExtentExamined.WHOLE, ""),
                        new ZoneSeen("back", ExtentExamined.PART, "lining")),
                List.of(observations),
                "two people, clean hands",
                "50 lux",
                "rolled, face out",
                earlier.isEmpty() ? null : new ExaminationId(earlier),
                new Signatory(null, "Inês Valderim", DateText.read(when)),
                Signatory.NOBODY,
                "");
    }
}
