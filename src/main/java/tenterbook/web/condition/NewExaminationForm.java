package tenterbook.web.condition;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.condition.ConditionWords;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.ExaminedPhoto;
import tenterbook.piece.condition.NextExamination;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.condition.ZoneSeen;
import tenterbook.web.form.ExaminationForm;
import tenterbook.web.form.Form;

/** The form of a new examination as it is first shown. */
final class NewExaminationForm {
    private NewExaminationForm() {}

    /** @param last whose observations are checked again; null for none */
    static Form of(Piece piece, @Nullable Examination last, LocalDate today, String maker) {
        Form form = Form.empty().put("when", today).put("examiner", maker);
        if (last != null) {
            carry(form, last);
        }
        for (PiecePhoto photo : piece.photos()) {
            boolean whole = photo.role() == PhotoRole.FRONT || photo.role() == PhotoRole.BACK;
            if (whole && photo.state() == piece.state() && last == null) {
                addPhoto(form, photo.photo(), view(photo.role()), photo.caption());
            }
        }
        zones(form, last == null ? List.of() : last.zones());
        return form;
    }

    private static void carry(Form form, Examination last) {
        form.put("earlier", last.id());
        for (ExaminedPhoto photo : last.photos()) {
            addPhoto(
                    form,
                    photo.photo(),
                    photo.view() == null ? "" : photo.view().toString(),
                    photo.caption());
        }
        List<Observation> again = NextExamination.toBeChecked(last);
        for (int i = 0; i < again.size(); i++) {
            ExaminationForm.put(form.row("observations", i), again.get(i));
        }
        form.put("handling", last.handling()).put("light", last.light()).put("packing", last.packing());
    }

    /** All zones are offered, those of the last examination too; the examiner enters how far each was seen. */
    private static void zones(Form form, List<ZoneSeen> before) {
        List<String> zones = java.util.stream.Stream.concat(
                        ConditionWords.zones().stream().map(ConditionWords.Word::word),
                        before.stream().map(ZoneSeen::zone))
                .distinct()
                .toList();
        for (int i = 0; i < zones.size(); i++) {
            form.row("zones", i).put("zone", zones.get(i));
        }
    }

    /** Adds a photograph unless it is there. */
    static void addPhoto(Form form, Digest digest, String view, String caption) {
        boolean there =
                form.rows("photos").stream().anyMatch(row -> row.text("photo").equals(digest.hex()));
        int free = 0;
        while (form.row("photos", free).has("photo")) {
            free++;
        }
        if (!there) {
            form.row("photos", free).put("photo", digest).put("view", view).put("caption", caption);
        }
    }

    /** The view of a piece's photograph in an examination; empty where the examiner must choose it. */
    static String view(@Nullable PhotoRole role) {
        return role == null
                ? ""
                : switch (role) {
                    case FRONT, BACK, DETAIL -> role.toString();
                    case FAULT, LAYER -> PhotoRole.DETAIL.toString();
                    default -> "";
                };
    }
}
