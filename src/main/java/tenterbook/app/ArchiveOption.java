package tenterbook.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.stream.Stream;
import picocli.CommandLine.Option;
import tenterbook.archive.Archive;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.words.Message;

/** Which archive a command works on. */
final class ArchiveOption {
    @Option(names = "--archive", paramLabel = "DIR", defaultValue = "archive")
    Path folder;

    /** Opens an archive that must be there. */
    Archive existing(Clock clock) {
        mustBeThere();
        return Archive.open(folder, clock);
    }

    /** As {@link #existing}; one in a folder that cannot be written, as on a read-only disc, is opened for reading. */
    Archive writableOrNot(Clock clock) {
        boolean writable = Stream.of("", "ledger.db", "in-use.lock")
                .map(folder::resolve)
                .allMatch(path -> !Files.exists(path) || Files.isWritable(path));
        return writable ? existing(clock) : reading(clock);
    }

    /** Opens an archive that must be there for reading; nothing in its folder is changed. */
    Archive reading(Clock clock) {
        // Without opening the ledger, since that writes beside it.
        if (!Files.isRegularFile(folder.resolve("ledger.db"))) {
            throw notThere();
        }
        return Archive.lookThrough(folder, clock);
    }

    /** As {@link #existing}, for reading, also while a program has the archive open. */
    Archive beside(Clock clock) {
        mustBeThere();
        return Archive.beside(folder, clock);
    }

    private void mustBeThere() {
        if (!LedgerFile.in(folder).begun()) {
            throw notThere();
        }
    }

    private ArchiveProblem notThere() {
        return new ArchiveProblem(Message.of("command.no-archive", "folder", folder.toAbsolutePath()));
    }
}
