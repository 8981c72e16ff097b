package tenterbook.ledger;

import org.jspecify.annotations.Nullable;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.words.Written;

/** One record that is there and cannot be read as what it should be; the others can. */
public final class Unreadable extends ArchiveProblem {
    private static final long serialVersionUID = 1L;

    Unreadable(Written explanation, @Nullable Throwable cause) {
        super(explanation, cause);
    }
}
