package tenterbook.app;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import tenterbook.app.open.ArchivePlace;
import tenterbook.app.open.RunningAddress;
import tenterbook.app.start.FreePort;
import tenterbook.exchange.Restore;
import tenterbook.ledger.file.ArchiveInUse;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.ledger.file.Progress;
import tenterbook.web.server.FirstStartPage.Beginning;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Serves the archive that is opened or chosen, or finds the program that serves it already. Closing ends what it serves. */
final class ArchiveOpening implements AutoCloseable {
    private static final Duration UNTIL_IT_SERVES = Duration.ofSeconds(10);

    private final ArchivePlace place;
    private final int port;
    private final PrintWriter out;
    private final Runnable end;
    private @Nullable Wiring wiring;
    private @Nullable RunningAddress noted;

    /** @param end asks the program to end */
    ArchiveOpening(ArchivePlace place, int port, PrintWriter out, Runnable end) {
        this.place = place;
        this.port = port;
        this.out = out;
        this.end = end;
    }

    /** Whether this program serves the archive, rather than another one that runs already. */
    synchronized boolean servesItself() {
        return wiring != null;
    }

    /**
     * Serves the archive of a folder.
     *
     * @return its address, here or in the program that has it open
     * @throws ArchiveProblem if it cannot be opened, or is in use by a program that does not show it
     */
    synchronized String open(Path folder) {
        if (wiring != null) {
            return wiring.address();
        }
        RunningAddress running = RunningAddress.in(folder);
        try {
            wiring = Wiring.serveUntil(end, folder, FreePort.from(port, out), Clock.systemDefaultZone());
            running.note(wiring.port());
            noted = running;
            return wiring.address();
        } catch (ArchiveInUse e) {
            try {
                return running.within(UNTIL_IT_SERVES).orElseThrow(() -> e);
            } catch (InterruptedException interrupted) {
                Thread.currentThread().interrupt();
                throw e;
            }
        }
    }

    /**
     * Begins an archive where there is none, serves it, and remembers its place.
     *
     * @throws Refusal if the folder is not a whole path, or has other things in it
     * @throws ArchiveProblem as {@link #open}
     */
    String choose(String typed, Beginning beginning) {
        Path folder = place.typed(typed);
        LedgerFile.archiveAround(folder).ifPresent(around -> {
            throw Refusal.of("first-start.in-an-archive", "folder", folder, "archive", around);
        });
        try {
            if (!LedgerFile.in(folder).begun()) {
                if (!LedgerFile.in(folder).folderUnused()) {
                    throw Refusal.of("first-start.other-things", "folder", folder);
                }
                Files.createDirectories(beginning == Beginning.SAMPLE ? folder.getParent() : folder);
                if (beginning == Beginning.SAMPLE) {
                    Path bag = SampleBag.find().orElseThrow(SampleBag::missing);
                    new Restore(Clock.systemUTC()).restore(bag, folder, Progress.UNWATCHED);
                }
            }
        } catch (IOException e) {
            throw new ArchiveProblem(
                    Message.of("ledger.folder-not-written", "folder", folder, "why", Explained.of(e)), e);
        }
        String address = open(folder);
        try {
            place.remember(folder);
        } catch (ArchiveProblem e) {
            // The archive is open; the next start asks again.
            LoggerFactory.getLogger(ArchiveOpening.class).warn("{}", e.getMessage());
        }
        return address;
    }

    @Override
    public synchronized void close() {
        if (noted != null) {
            noted.forget();
        }
        if (wiring != null) {
            wiring.close();
        }
    }
}
