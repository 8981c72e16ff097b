package tenterbook.web.form;

import java.util.Currency;
import java.util.Set;
import java.util.function.Supplier;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.ClampingRecord;
import tenterbook.recipe.Clamping;

/** A clamping. A board pair and its state are chosen together, as in {@code B02/II}. */
public final class ClampingForm extends RecordForm<Clamping> {
    private static final String CHOSEN = "use";

    ClampingForm(Supplier<Currency> currency) {
        super(Kinds.CLAMPING, ClampingRecord.CLAMPING, Set.of(), currency);
    }

    @Override
    public Form filled(Clamping clamping) {
        Form form = super.filled(clamping);
        for (Form row : form.rows("boards")) {
            row.put(CHOSEN, row.value("board") + (row.has("state") ? "/" + row.value("state") : ""));
        }
        return form;
    }

    @Override
    protected void prepare(Form form) {
        for (Form row : form.rows("boards")) {
            String[] parts = row.text(CHOSEN).split("/", 2);
            row.put("board", parts[0]).put("state", parts.length > 1 ? parts[1] : "");
        }
    }
}
