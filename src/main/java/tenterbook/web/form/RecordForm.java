package tenterbook.web.form;

import java.util.Currency;
import java.util.Set;
import java.util.function.Supplier;
import tenterbook.archive.field.Part;
import tenterbook.ledger.revision.Kind;

/** The form of a record of one kind. */
public class RecordForm<T> extends PartForm<T> {
    private final Kind<T> kind;

    /**
     * @param notShown fields that the form does not show and leaves as they are, as in {@code photos.regions}
     * @param currency of a price that names none
     */
    public RecordForm(Kind<T> kind, Part<T> part, Set<String> notShown, Supplier<Currency> currency) {
        super(part, notShown, currency);
        this.kind = kind;
    }

    public final Kind<T> kind() {
        return kind;
    }
}
