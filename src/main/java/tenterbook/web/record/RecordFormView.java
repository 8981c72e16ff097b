package tenterbook.web.record;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.record.Difference;
import tenterbook.web.form.Form;

/**
 * What a form's template shows.
 *
 * @param id of the record; empty for a new one
 * @param version the edit began from; 0 for a new one
 * @param action where the form posts to
 * @param draft name under which unsaved typing is kept
 * @param draftFrom when the shown draft was kept, or null where none is shown
 * @param theirs what someone else saved meanwhile; empty without a conflict
 * @param trouble a sentence above the form, or empty
 * @param withdrawn what can be done with the typing where the record was withdrawn meanwhile, else null
 */
public record RecordFormView(
        Form form,
        String id,
        int version,
        String action,
        String draft,
        @Nullable Instant draftFrom,
        List<Difference> theirs,
        String trouble,
        @Nullable Withdrawn withdrawn) {
    /**
     * The record was withdrawn while somebody was typing.
     *
     * @param history address of its history, from which it can be brought back
     * @param asNew where the typing can be sent as a new record; empty where there is no such place
     * @param key name of the field that names the new record
     */
    public record Withdrawn(String history, String asNew, String key) {}

    /** Prefix of the names in the row that was just added; empty otherwise. */
    public String added() {
        return form.added();
    }

    RecordFormView with(Withdrawn then) {
        return new RecordFormView(form, id, version, action, draft, draftFrom, theirs, trouble, then);
    }
}
