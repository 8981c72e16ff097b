package tenterbook.web.form;

import static tenterbook.measure.Unit.CENTIMETRE;
import static tenterbook.measure.Unit.MILLIMETRE;

import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Kind;
import tenterbook.measure.Digest;
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

/** An examination. Its name and piece are not in the form: they are given with it and never change. */
public final class ExaminationForm implements RecordForm<Examination> {
    @Override
    public Kind<Examination> kind() {
        return Kinds.EXAMINATION;
    }

    @Override
    public Form filled(Examination examination) {
        Form form = Form.empty();
        form.put("id", examination.id()).put("piece", examination.piece());
        form.put("when", examination.when());
        form.put("place", examination.place()).put("party", examination.party());
        form.put("examiner", examination.examiner()).put("means", examination.means());
        form.put("reason", examination.reason());
        form.put("overall", examination.overall());
        form.put("summary", examination.summary());
        form.put("length", examination.length());
        form.put("width", examination.width());
        for (int i = 0; i < examination.photos().size(); i++) {
            ExaminedPhoto photo = examination.photos().get(i);
            form.row("photos", i)
                    .put("digest", photo.photo())
                    .put("role", photo.view())
                    .put("caption", photo.caption());
        }
        for (int i = 0; i < examination.zones().size(); i++) {
            ZoneSeen zone = examination.zones().get(i);
            form.row("zones", i)
                    .put("zone", zone.zone())
                    .put("seen", zone.seen())
                    .put("note", zone.note());
        }
        for (int i = 0; i < examination.observations().size(); i++) {
            put(form.row("observations", i), examination.observations().get(i));
        }
        form.put("handling", examination.handling())
                .put("light", examination.light())
                .put("packing", examination.packing());
        form.put("earlier", examination.earlier());
        put(form, "handedOver", examination.handedOver());
        put(form, "received", examination.received());
        form.put("notes", examination.notes());
        return form;
    }

    private static void put(Form form, String field, Signatory signatory) {
        form.put(field + ".name", signatory.name()).put(field + ".party", signatory.party());
        form.put(field + ".when", signatory.when());
    }

    /** Puts an observation into its row. */
    public static void put(Form row, Observation observation) {
        row.put("number", observation.number()).put("what", observation.what());
        row.put("zone", observation.zone()).put("where", observation.place());
        row.put("extent", observation.extent());
        row.put("across", observation.across());
        row.put("severity", observation.severity());
        row.put("stability", observation.stability());
        row.put("standing", observation.standing());
        row.put("note", observation.note());
        for (int i = 0; i < observation.marks().size(); i++) {
            PhotoMark mark = observation.marks().get(i);
            row.row("marks", i).put("photo", mark.photo()).put("at", mark.percent());
        }
    }

    @Override
    public Examination read(Form form, Examination old) {
        ExaminationId id = old != null ? old.id() : form.read("id", null, ExaminationId::new);
        PieceNumber piece = old != null ? old.piece() : form.read("piece", null, PieceNumber::new);
        List<ExaminedPhoto> photos = new ArrayList<>();
        for (Form row : form.rows("photos")) {
            Digest digest = row.read("digest", null, Digest::new);
            if (digest != null && !row.checked("leaveOut")) {
                photos.add(new ExaminedPhoto(digest, row.choice("role", PhotoView.values()), row.text("caption")));
            }
        }
        List<ZoneSeen> zones = form.each("zones", ExaminationForm::zone);
        List<Observation> observations = new ArrayList<>();
        for (Form row : form.rows("observations")) {
            Observation observation = observation(row);
            if (observation != null) {
                observations.add(observation);
            }
        }
        Examination examination = form.build(
                "photos",
                () -> new Examination(
                        id,
                        piece,
                        form.date("when"),
                        form.text("place"),
                        form.read("party", null, PartyId::new),
                        form.text("examiner"),
                        form.choice("reason", Reason.values()),
                        form.text("means"),
                        form.choice("overall", Overall.values()),
                        form.text("summary"),
                        form.quantity("length", CENTIMETRE),
                        form.quantity("width", CENTIMETRE),
                        photos,
                        zones,
                        observations,
                        form.text("handling"),
                        form.text("light"),
                        form.text("packing"),
                        form.read("earlier", null, ExaminationId::new),
                        signatory(form, "handedOver"),
                        signatory(form, "received"),
                        form.text("notes")));
        return form.hasProblems() ? null : examination;
    }

    private static Signatory signatory(Form form, String field) {
        return new Signatory(
                form.read(field + ".party", null, PartyId::new),
                form.text(field + ".name"),
                form.date(field + ".when"));
    }

    /** A zone that only stands there to be filled in says nothing. */
    private static ZoneSeen zone(Form row) {
        if (!row.has("seen") && !row.has("note")) {
            return null;
        }
        if (!row.has("zone")) {
            row.problem("zone", "Say which part was looked at, as in ‘back’.");
            return null;
        }
        return new ZoneSeen(row.text("zone"), row.choice("seen", Seen.values()), row.text("note"));
    }

    /** Whether nothing was entered beside what the form itself put into the row. */
    static boolean untouched(Form row) {
        boolean typed = java.util.stream.Stream.of("what", "where", "extent", "across", "severity", "stability", "note")
                .anyMatch(row::has);
        return !typed && row.rows("marks").stream().noneMatch(mark -> mark.has("at"));
    }

    private static Observation observation(Form row) {
        if (untouched(row)) {
            return null;
        }
        Integer number = row.wholeNumber("number");
        if (!row.has("what")) {
            row.problem(
                    "what",
                    "Say what was seen at %s, as in ‘stain’.".formatted(number == null ? "this place" : number));
            return null;
        }
        List<PhotoMark> marks = row.each("marks", ExaminationForm::mark);
        return row.build(
                "what",
                () -> new Observation(
                        number == null ? 0 : number,
                        row.text("what"),
                        row.text("zone"),
                        row.text("where"),
                        row.quantity("extent", MILLIMETRE),
                        row.quantity("across", MILLIMETRE),
                        row.choice("severity", Severity.values()),
                        row.choice("stability", Stability.values()),
                        row.choice("standing", Standing.values()),
                        row.text("note"),
                        marks));
    }

    private static PhotoMark mark(Form row) {
        if (!row.has("at")) {
            return null;
        }
        Digest photo = row.read("photo", null, Digest::new);
        if (photo == null) {
            row.problem("photo", "Say on which photograph the mark stands.");
            return null;
        }
        return row.read("at", null, text -> PhotoMark.read(photo, text));
    }
}
