package tenterbook.ledger.file;

import tenterbook.words.Message;

/** The archive was opened for reading, so nothing is saved. */
public final class ReadOnlyArchive extends ArchiveProblem {
    private static final long serialVersionUID = 1L;

    public ReadOnlyArchive() {
        super(Message.of("ledger.read-only"));
    }
}
