package tenterbook.web.studio;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.exchange.PackRefused;
import tenterbook.exchange.backup.ArchiveKey;
import tenterbook.exchange.backup.Backup;
import tenterbook.exchange.backup.BackupNote;
import tenterbook.exchange.openpgp.Passphrase;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.DateWords;
import tenterbook.web.Site;
import tenterbook.web.job.Job;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Words;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Backups from the studio's page, and by themselves once a day where a folder is chosen. */
public final class BackupPages {
    /** A good backup that is older is followed by another while the program runs. */
    private static final Duration EVERY = Duration.ofDays(1);

    private final Site site;

    public BackupPages(Site site) {
        this.site = site;
    }

    /**
     * @param folder chosen, or empty
     * @param state when the last good one was made, in a sentence
     * @param encrypted whether the next ones are
     */
    public record BackupView(String folder, String state, boolean encrypted) {
        /** Fewest characters of a passphrase. */
        public int shortest() {
            return Passphrase.SHORTEST;
        }
    }

    public BackupView view() {
        BackupNote note = note();
        Instant now = site.clock().instant();
        String state = note.lastGood()
                .map(at -> w(
                        "backup.last",
                        "day",
                        DateWords.day(at.atZone(site.clock().getZone()).toLocalDate()),
                        "days",
                        Duration.between(at, now).toDays()))
                .orElseGet(() -> w("backup.none-yet"));
        return new BackupView(note.folder(), state, ArchiveKey.in(root()));
    }

    void routes(RoutesConfig routes) {
        routes.post("/studio/backup", this::make);
        routes.post("/studio/backup/trial", this::trial);
        routes.post("/studio/backup/encrypted", this::encrypt);
        routes.post("/studio/backup/plain", this::dontEncrypt);
    }

    private BackupNote note() {
        return BackupNote.in(root());
    }

    private Path root() {
        return site.archive().folder().root();
    }

    private void make(Context ctx) {
        String typed = String.valueOf(ctx.formParam("folder")).strip();
        Path folder = absolute(typed);
        if (folder == null) {
            FlashMessage.andGo(ctx, w("backup.choose", "typed", typed), "/studio");
            return;
        }
        note().to(folder.toString()).keep(root());
        go(ctx, start(site, folder, Words.conventions()));
    }

    private static @Nullable Path absolute(String typed) {
        try {
            Path folder = Path.of(typed);
            return typed.isEmpty() || !folder.isAbsolute() ? null : folder.normalize();
        } catch (InvalidPathException e) {
            return null;
        }
    }

    private void encrypt(Context ctx) throws IOException {
        try {
            Passphrase chosen = Passphrase.chosen(typed(ctx, "passphrase"), typed(ctx, "again"));
            ArchiveKey.choose(root(), chosen, site.clock().instant());
        } catch (Refusal e) {
            FlashMessage.andGo(ctx, Words.sentence(e), "/studio");
            return;
        }
        FlashMessage.andGo(ctx, w("backup.encrypted.chosen"), "/studio");
    }

    private void dontEncrypt(Context ctx) throws IOException {
        ArchiveKey.putAside(root());
        FlashMessage.andGo(ctx, w("backup.encrypted.off"), "/studio");
    }

    private static String typed(Context ctx, String name) {
        String typed = ctx.formParam(name);
        return typed == null ? "" : typed;
    }

    private void trial(Context ctx) {
        String folder = note().folder();
        Passphrase passphrase = Passphrase.of(typed(ctx, "passphrase"));
        String which = ctx.formParam("all") == null ? Backup.NEWEST : Backup.ALL;
        Conventions reader = Words.conventions();
        go(ctx, site.jobs().start(w("backup.trying"), progress -> {
            try {
                Backup.Tried tried = new Backup(Path.of(folder), site.clock())
                        .trial(site.archive(), which, () -> passphrase, progress);
                return outcome(tried.summary(), tried.findings(), reader);
            } catch (PackRefused e) {
                return refused(e, reader);
            } catch (Refusal e) {
                return outcome(Message.of("backup.not-tried"), List.of(new Finding(folder, e.explanation())), reader);
            }
        }));
    }

    private static void go(Context ctx, Job job) {
        ctx.redirect("/work/" + job.id(), HttpStatus.SEE_OTHER);
    }

    private static Job start(Site site, Path folder, Conventions reader) {
        return site.jobs()
                .start(Message.of("backup.making").in(reader), progress -> made(site, folder, reader, progress));
    }

    private static Job.Outcome made(Site site, Path folder, Conventions reader, Progress progress) {
        try {
            Backup.Made made = new Backup(folder, site.clock()).make(site.archive(), progress);
            return outcome(made.summary(), made.findings(), reader);
        } catch (PackRefused e) {
            return refused(e, reader);
        }
    }

    /** A disk that is not there is a finding and no failure of the program. */
    private static Job.Outcome refused(PackRefused e, Conventions reader) {
        return outcome(Message.of("backup.nothing-made"), e.findings(), reader);
    }

    private static Job.Outcome outcome(Message summary, List<Finding> findings, Conventions reader) {
        return new Job.Outcome(
                summary.in(reader),
                findings.stream().map(line -> line.in(reader)).toList(),
                "/studio");
    }

    /** Makes one where a folder is chosen and the last good one is older than a day; called now and then. */
    public static void whenDue(Site site) {
        BackupNote note = BackupNote.in(site.archive().folder().root());
        Instant due = site.clock().instant().minus(EVERY);
        if (!note.folder().isEmpty()
                && note.lastGood().filter(at -> at.isAfter(due)).isEmpty()) {
            start(site, Path.of(note.folder()), site.archive().conventions());
        }
    }
}
