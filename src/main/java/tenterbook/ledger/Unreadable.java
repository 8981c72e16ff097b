package tenterbook.ledger;

import org.jspecify.annotations.Nullable;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.words.Written;

/** One stored record cannot be read as its kind; others can. */
public final class Unreadable extends ArchiveProblem {
    private static final long serialVersionUID = 1L;

    Unreadable(Written explanation, @Nullable Throwable cause) {
        super(explanation, cause);
    }
}
