package tenterbook.app;

import java.nio.file.Path;
import java.time.Clock;
import picocli.CommandLine.Option;
import tenterbook.archive.Archive;
import tenterbook.ledger.ArchiveProblem;
import tenterbook.ledger.LedgerFile;

/** Which archive a command works on. */
final class ArchiveOption {
    @Option(
            names = "--archive",
            paramLabel = "DIR",
            defaultValue = "archive",
            description = "Folder of the archive (default: ${DEFAULT-VALUE} in the folder you are in).")
    Path folder;

    /** Opens an archive that must be there. */
    Archive existing(Clock clock) {
        if (!LedgerFile.in(folder).begun()) {
            throw new ArchiveProblem(
                    "There is no archive in %s: expected a ledger in a file ledger.db there and found none. Give its folder with --archive, or begin one with ‘serve’."
                            .formatted(folder.toAbsolutePath()));
        }
        return Archive.open(folder, clock);
    }
}
