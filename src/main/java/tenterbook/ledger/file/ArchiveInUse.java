package tenterbook.ledger.file;

import java.nio.file.Path;
import tenterbook.words.Message;

/** Another program has the archive open, or this one has already. */
public final class ArchiveInUse extends ArchiveProblem {
    private static final long serialVersionUID = 1L;

    ArchiveInUse(Path root) {
        super(Message.of("ledger.in-use", "folder", root.toAbsolutePath()));
    }
}
