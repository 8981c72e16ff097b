package tenterbook.web.photo;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.arrival.ArrivalReport;
import tenterbook.archive.arrival.Arrivals;
import tenterbook.archive.arrival.PhotoFolder;
import tenterbook.imaging.IntakePool.Incoming;
import tenterbook.web.Site;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.job.Job;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;
import tenterbook.words.Conventions;

/** Taking in many photographs at once, as work that can be watched and stopped. */
public final class ArrivalPages {
    private static final Logger LOG = LoggerFactory.getLogger(ArrivalPages.class);

    private final Site site;

    public ArrivalPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/photos/folder", ctx -> show(ctx, 200, "", false, ""));
        routes.post("/photos/folder/path", this::path);
        routes.post("/photos/folder/files", this::files);
    }

    /**
     * The page.
     *
     * @param path as it was typed
     * @param problem why nothing was taken in, or empty
     */
    public record ArrivalView(String path, boolean within, String problem) {}

    private void show(Context ctx, int status, String path, boolean within, String problem) {
        ctx.status(status);
        Html.show(
                ctx,
                "arrivals",
                Map.of(
                        "page",
                        site.page(ctx, w("photo.take-photographs-in"), "record"),
                        "view",
                        new ArrivalView(path, within, problem)));
    }

    private void path(Context ctx) {
        String typed = Optional.ofNullable(ctx.formParam("path")).orElse("");
        boolean within = ctx.formParam("within") != null;
        List<Path> found;
        try {
            found = PhotoFolder.files(typed, within, site.archive().folder().root());
        } catch (IllegalArgumentException e) {
            show(ctx, 422, typed, within, Words.sentence(e));
            return;
        }
        go(ctx, found.stream().map(Incoming::file).toList(), () -> {});
    }

    /** The server forgets what was sent when it has answered, so the files are put by until their turn comes. */
    private void files(Context ctx) throws IOException {
        List<UploadedFile> sent = FormEncoding.files(ctx, "files");
        if (sent.isEmpty()) {
            show(ctx, 422, "", false, w("arrival.no-files"));
            return;
        }
        List<Path> putBy = new ArrayList<>();
        List<Incoming> incoming = new ArrayList<>();
        try {
            for (UploadedFile file : sent) {
                Path part = site.originals().arriving();
                putBy.add(part);
                try (InputStream bytes = file.content()) {
                    Files.copy(bytes, part);
                }
                incoming.add(new Incoming(file.filename(), () -> Files.newInputStream(part)));
            }
        } catch (IOException | RuntimeException e) {
            forget(putBy);
            throw e;
        }
        go(ctx, incoming, () -> forget(putBy));
    }

    private static void forget(List<Path> parts) {
        for (Path part : parts) {
            try {
                Files.deleteIfExists(part);
            } catch (IOException e) {
                LOG.warn("{} stays until the archive is opened again", part, e);
            }
        }
    }

    private void go(Context ctx, List<Incoming> incoming, Runnable afterwards) {
        Arrivals arrivals = new Arrivals(site.archive(), site.intake(), site.author());
        Conventions reader = Words.conventions();
        Job job = site.jobs()
                .start(
                        w("arrival.title"),
                        progress -> {
                            ArrivalReport report = arrivals.take(incoming, progress);
                            return new Job.Outcome(
                                    report.summary().in(reader),
                                    report.findings().stream()
                                            .map(finding -> finding.in(reader))
                                            .toList(),
                                    "/photos/waiting");
                        },
                        afterwards);
        ctx.redirect("/work/" + job.id(), HttpStatus.SEE_OTHER);
    }
}
