package tenterbook.ledger;

import org.jspecify.annotations.Nullable;

/** The archive cannot be opened or written as it is; the message says what to do. */
public class ArchiveProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public ArchiveProblem(String message) {
        super(message);
    }

    public ArchiveProblem(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
