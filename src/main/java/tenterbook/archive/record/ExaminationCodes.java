package tenterbook.archive.record;

import tenterbook.archive.field.Codes;
import tenterbook.piece.condition.ChangeSinceLast;
import tenterbook.piece.condition.ExtentExamined;
import tenterbook.piece.condition.Overall;
import tenterbook.piece.condition.PhotoView;
import tenterbook.piece.condition.Reason;
import tenterbook.piece.condition.Severity;
import tenterbook.piece.condition.Stability;

/** The stored codes of examinations; frozen like {@link StoredCodes}. */
public final class ExaminationCodes {
    public static final Codes<Reason> REASON = Codes.of("reason", Reason.class)
            .code(Reason.BEFORE_LOAN, "before a loan")
            .code(Reason.DEPARTURE, "on departure")
            .code(Reason.ARRIVAL, "on arrival")
            .code(Reason.RETURN, "on return")
            .code(Reason.SALE, "before a sale")
            .code(Reason.AFTER_WASH, "after washing")
            .code(Reason.ROUTINE, "routine")
            .code(Reason.OTHER, "other")
            .unrecorded("not said")
            .complete();

    public static final Codes<Overall> OVERALL = Codes.of("overall", Overall.class)
            .code(Overall.GOOD, "good")
            .code(Overall.FAIR, "fair")
            .code(Overall.POOR, "poor")
            .code(Overall.FAILING, "failing")
            .unrecorded("not said")
            .complete();

    public static final Codes<Severity> SEVERITY = Codes.of("severity", Severity.class)
            .code(Severity.SLIGHT, "slight")
            .code(Severity.MODERATE, "moderate")
            .code(Severity.SEVERE, "severe")
            .unrecorded("not said")
            .complete();

    public static final Codes<Stability> STABILITY = Codes.of("stability", Stability.class)
            .code(Stability.STABLE, "stable")
            .code(Stability.AT_RISK, "may get worse")
            .code(Stability.ACTIVE, "getting worse")
            .unrecorded("not said")
            .complete();

    public static final Codes<ChangeSinceLast> STANDING = Codes.of("standing", ChangeSinceLast.class)
            .code(ChangeSinceLast.STILL_THERE, "still there")
            .code(ChangeSinceLast.WORSE, "worse")
            .code(ChangeSinceLast.BETTER, "better")
            .code(ChangeSinceLast.GONE, "gone")
            .code(ChangeSinceLast.NOT_CHECKED, "not checked")
            .complete();

    public static final Codes<ExtentExamined> SEEN = Codes.of("seen", ExtentExamined.class)
            .code(ExtentExamined.WHOLE, "examined")
            .code(ExtentExamined.PART, "in part")
            .code(ExtentExamined.NOT, "not examined")
            .unrecorded("not said")
            .complete();

    public static final Codes<PhotoView> PHOTO_VIEW = Codes.of("photo-view", PhotoView.class)
            .code(PhotoView.FRONT, "front")
            .code(PhotoView.BACK, "back")
            .code(PhotoView.RAKING_LIGHT, "raking light")
            .code(PhotoView.LIGHT_BEHIND, "light from behind")
            .code(PhotoView.DETAIL, "detail")
            .code(PhotoView.EDGE, "edge")
            .code(PhotoView.HANGING_DEVICE, "hanging device")
            .code(PhotoView.PACKING, "packing")
            .code(PhotoView.OTHER, "other")
            .complete();

    private ExaminationCodes() {}
}
