package tenterbook.web.form;

import java.util.Currency;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.ExaminationRecord;
import tenterbook.measure.Digest;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.condition.PhotoMark;

/**
 * An examination. Its piece is given with it and never changes; a mark on a photograph is written in one field, as in {@code 42,31};
 * rows that were offered and not filled in count as empty.
 */
public final class ExaminationForm extends RecordForm<Examination> {
    private static final String AT = "at";

    ExaminationForm(Supplier<Currency> currency) {
        super(Kinds.EXAMINATION, ExaminationRecord.EXAMINATION, Set.of("piece"), currency);
    }

    @Override
    public Form filled(Examination examination) {
        Form form = super.filled(examination);
        for (int i = 0; i < examination.observations().size(); i++) {
            showMarks(form.row("observations", i), examination.observations().get(i));
        }
        return form;
    }

    /** Puts an observation into its row. */
    public static void put(Form row, Observation observation) {
        fill(ExaminationRecord.OBSERVATION, ExaminationRecord.OBSERVATION.write(observation), row);
        showMarks(row, observation);
    }

    private static void showMarks(Form row, Observation observation) {
        for (int i = 0; i < observation.marks().size(); i++) {
            row.row("marks", i).put(AT, observation.marks().get(i).percent());
        }
    }

    @Override
    protected void prepare(Form form) {
        form.rows("observations").stream()
                .flatMap(row -> row.rows("marks").stream())
                .forEach(ExaminationForm::readMark);
    }

    private static void readMark(Form mark) {
        Digest photo = mark.read("photo", null, Digest::new);
        PhotoMark read = photo == null ? null : mark.read(AT, null, text -> PhotoMark.read(photo, text));
        mark.put("left", read == null ? null : read.left()).put("top", read == null ? null : read.top());
        mark.put("right", read == null ? null : read.right()).put("bottom", read == null ? null : read.bottom());
    }

    @Override
    protected boolean untouched(String list, Form row) {
        return switch (list) {
            case "zones" -> !row.has("seen") && !row.has("note");
            case "observations" -> untouched(row);
            case "marks" -> !row.has(AT);
            default -> row.blank();
        };
    }

    /** Whether nothing was entered beside what the form itself put into the row of an observation. */
    static boolean untouched(Form row) {
        boolean typed = Stream.of("what", "place", "extent", "across", "severity", "stability", "note")
                .anyMatch(row::has);
        return !typed && row.rows("marks").stream().noneMatch(mark -> mark.has(AT));
    }
}
