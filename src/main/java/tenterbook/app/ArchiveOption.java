package tenterbook.app;

import java.nio.file.Path;
import java.time.Clock;
import picocli.CommandLine.Option;
import tenterbook.archive.Archive;
import tenterbook.ledger.ArchiveProblem;
import tenterbook.ledger.LedgerFile;
import tenterbook.words.Message;

/** Which archive a command works on. */
final class ArchiveOption {
    @Option(names = "--archive", paramLabel = "DIR", defaultValue = "archive")
    Path folder;

    /** Opens an archive that must be there. */
    Archive existing(Clock clock) {
        if (!LedgerFile.in(folder).begun()) {
            throw new ArchiveProblem(Message.of("command.no-archive", "folder", folder.toAbsolutePath()));
        }
        return Archive.open(folder, clock);
    }
}
