package tenterbook.web.form;

import java.util.Currency;
import java.util.List;
import java.util.Set;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.LabelSheet;
import tenterbook.archive.record.StudioRecords;

/** A sheet or roll of labels, in plain millimetres. */
public final class LabelSheetForm extends RecordForm<LabelSheet> {
    public LabelSheetForm() {
        super(Kinds.LABEL_SHEET, StudioRecords.LABEL_SHEET, Set.of(), () -> Currency.getInstance("EUR"));
    }

    /** For a new sheet: A4, and a printer without offset. */
    public Form begun() {
        Form form = Form.empty().put("widthMm", "210").put("heightMm", "297");
        List.of("columnGapMm", "rowGapMm", "shiftRightMm", "shiftDownMm", "acrossPerMille", "downPerMille")
                .forEach(name -> form.put(name, "0"));
        return form;
    }
}
