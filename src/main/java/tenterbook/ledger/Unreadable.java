package tenterbook.ledger;

import org.jspecify.annotations.Nullable;

/** One record that is there and cannot be read as what it should be; the others can. */
public final class Unreadable extends ArchiveProblem {
    private static final long serialVersionUID = 1L;

    Unreadable(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
