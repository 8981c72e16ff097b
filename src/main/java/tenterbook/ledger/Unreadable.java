package tenterbook.ledger;

/** One record that is there and cannot be read as what it should be; the others can. */
public final class Unreadable extends ArchiveProblem {
    private static final long serialVersionUID = 1L;

    Unreadable(String message, Throwable cause) {
        super(message, cause);
    }
}
