package tenterbook.app;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Timer;
import java.util.TimerTask;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.ArrivalReport;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.PaperPdf;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.exchange.UnnamedOriginals;
import tenterbook.imaging.Originals;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.search.PieceIndex;
import tenterbook.search.recognition.Recogniser;
import tenterbook.web.Site;
import tenterbook.web.device.StudioNetwork;
import tenterbook.web.job.Job;
import tenterbook.web.job.Jobs;
import tenterbook.web.piece.TagFacet;
import tenterbook.web.server.Server;
import tenterbook.web.studio.BackupPages;
import tenterbook.web.studio.CloseButton;
import tenterbook.words.Message;

/** One open archive with all that serves it; closing it closes everything in turn. */
public final class Wiring implements AutoCloseable {
    private final Archive archive;
    private final PieceIndex index;
    private final Recogniser recogniser;
    private final TagTable tags;
    private final Jobs jobs;
    private final Server server;
    private Thread starting = new Thread();
    private final Timer backups = new Timer("backups", true);

    private Wiring(Archive archive, PieceIndex index, Recogniser recogniser, TagTable tags, Jobs jobs, Server server) {
        this.archive = archive;
        this.index = index;
        this.recogniser = recogniser;
        this.tags = tags;
        this.jobs = jobs;
        this.server = server;
    }

    /**
     * Opens the archive in {@code folder}, making an empty one where there is none, and serves it.
     *
     * @param port 0 for any free one
     */
    public static Wiring serve(Path folder, int port, Clock clock) {
        return serve(Archive.open(folder, clock), port);
    }

    /**
     * As {@link #serve(Path, int, Clock)}, with a button that ends the program.
     *
     * @param end what the button asks for; returns at once
     */
    static Wiring serveUntil(Runnable end, Path folder, int port, Clock clock) {
        return serve(Archive.open(folder, clock), port, new CloseButton(end));
    }

    /**
     * Serves an open archive, and closes it in the end.
     *
     * @param port 0 for any free one
     */
    public static Wiring serve(Archive archive, int port) {
        return serve(archive, port, null);
    }

    private static Wiring serve(Archive archive, int port, @Nullable CloseButton close) {
        Clock clock = archive.ledger().clock();
        TagTable tags = null;
        PieceIndex index = null;
        Recogniser recogniser = null;
        try {
            // Only a warning: the records are intact, and the maker must have access to them.
            Finding.listed(ArchiveCheck.atStart(archive))
                    .forEach(line -> LoggerFactory.getLogger(Wiring.class).warn("{}", line.inEnglish()));
            tags = TagTable.open(archive);
            index = PieceIndex.open(archive, new TagFacet(tags), clock);
            recogniser = Recogniser.open(archive);
            Originals originals = new Originals(archive.folder());
            Previews previews = new Previews(archive.folder(), originals);
            Jobs jobs = new Jobs();
            Site site = new Site(
                    archive,
                    index,
                    recogniser,
                    tags,
                    originals,
                    new PhotoIntake(originals, previews, archive.cloths()),
                    previews,
                    jobs,
                    clock);
            Wiring wiring = new Wiring(archive, index, recogniser, tags, jobs, Server.start(site, port, close));
            if (!site.readOnly() && archive.ledger().clock().doubt().isEmpty()) {
                wiring.beginWriting(site);
            }
            return wiring;
        } catch (IOException e) {
            closeQuietly(recogniser, index, tags, archive);
            throw new ArchiveProblem(
                    Message.of(
                            "command.archive-not-written",
                            "folder",
                            archive.folder().root().toAbsolutePath(),
                            "why",
                            String.valueOf(e.getMessage())),
                    e);
        } catch (RuntimeException e) {
            closeQuietly(recogniser, index, tags, archive);
            throw e;
        }
    }

    /** What the program writes unasked. */
    private void beginWriting(Site site) {
        storeOldPapers(site);
        joinUnnamed(site);
        backUpDaily(site);
    }

    /** Runs while the server answers, so that a start neither waits for it nor fails through it. */
    private static void storeOldPapers(Site site) {
        if (site.archive().ledger().count(Kinds.ISSUED_PAPER) > 0) {
            site.jobs()
                    .start(
                            Message.of("command.storing-papers").inEnglish(),
                            progress -> new Job.Outcome(
                                    Message.of("command.papers-stored").inEnglish(),
                                    PaperPdf.storeAll(site.archive(), PhotoSource.of(site.previews()), progress),
                                    ""));
        }
    }

    /**
     * Originals that a killed program left without a record join those that wait. Found while the server answers; what arrives
     * from now on is not looked at, since its record is still to come.
     */
    private void joinUnnamed(Site site) {
        Instant start = Instant.now();
        starting = new Thread(
                () -> {
                    try {
                        UnnamedOriginals unnamed = UnnamedOriginals.before(start, site.archive());
                        if (!unnamed.files().isEmpty()) {
                            site.jobs().start(Message.of("command.joining").inEnglish(), progress -> {
                                ArrivalReport report = unnamed.join(site.archive(), site.intake(), progress);
                                return new Job.Outcome(
                                        report.summary().inEnglish(),
                                        report.findings().stream()
                                                .map(Message::inEnglish)
                                                .toList(),
                                        "/photos/waiting");
                            });
                        }
                    } catch (IOException | RuntimeException e) {
                        // They stay where they are; 'check' names them, and the next start tries again.
                        LoggerFactory.getLogger(Wiring.class).warn("Originals without a record were not looked for", e);
                    }
                },
                "unnamed-originals");
        starting.setDaemon(true);
        starting.start();
    }

    /** Looks every hour whether a backup is due, the first time a minute after the start. */
    private void backUpDaily(Site site) {
        backups.schedule(
                new TimerTask() {
                    @Override
                    public void run() {
                        try {
                            BackupPages.whenDue(site);
                        } catch (RuntimeException e) {
                            LoggerFactory.getLogger(Wiring.class).warn("No backup was begun", e);
                        }
                    }
                },
                Duration.ofMinutes(1).toMillis(),
                Duration.ofHours(1).toMillis());
    }

    private void awaitStart() {
        try {
            starting.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void closeQuietly(Recogniser recogniser, PieceIndex index, TagTable tags, Archive archive) {
        if (recogniser != null) {
            recogniser.close();
        }
        if (index != null) {
            index.close();
        }
        if (tags != null) {
            tags.close();
        }
        archive.close();
    }

    public Archive archive() {
        return archive;
    }

    public int port() {
        return server.port();
    }

    public String address() {
        return "http://127.0.0.1:" + port();
    }

    /** The local network as a second way in. */
    public StudioNetwork network() {
        return server.network();
    }

    /** Every route the server answers, as in {@code GET /api/pieces/{number}}. */
    public List<String> routes() {
        return server.routes();
    }

    @Override
    public void close() {
        server.close();
        backups.cancel();
        awaitStart();
        jobs.close();
        recogniser.close();
        index.close();
        tags.close();
        archive.close();
    }
}
