package tenterbook.web;

import static tenterbook.web.Words.w;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.http.staticfiles.Location;
import jakarta.servlet.http.HttpServletResponse;
import java.io.EOFException;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.eclipse.jetty.http.HttpException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.documents.PaperErased;
import tenterbook.imaging.Originals;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.labelling.LabelBlocked;
import tenterbook.ledger.ArchiveProblem;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.StillReferenced;
import tenterbook.web.clamping.BoardPages;
import tenterbook.web.clamping.ClampingPages;
import tenterbook.web.clamping.DipPages;
import tenterbook.web.clamping.MaterialPages;
import tenterbook.web.colour.ColourApi;
import tenterbook.web.colour.ColourPages;
import tenterbook.web.condition.ConditionApi;
import tenterbook.web.condition.ConditionPages;
import tenterbook.web.condition.ConditionReportPages;
import tenterbook.web.photo.ArrivalPages;
import tenterbook.web.photo.CalibrationPages;
import tenterbook.web.photo.ClothPages;
import tenterbook.web.photo.FadingPages;
import tenterbook.web.photo.LayerPages;
import tenterbook.web.photo.PhotoColourApi;
import tenterbook.web.photo.PhotoMeasuring;
import tenterbook.web.photo.PhotoPages;
import tenterbook.web.photo.WaitingPages;
import tenterbook.web.piece.PieceApi;
import tenterbook.web.piece.PieceListPages;
import tenterbook.web.piece.PiecePages;
import tenterbook.web.print.DocumentPages;
import tenterbook.web.print.IssuedPages;
import tenterbook.web.print.LabelApi;
import tenterbook.web.print.PrintPages;
import tenterbook.web.print.SheetPages;
import tenterbook.web.print.VerifyPages;
import tenterbook.web.record.DraftPages;
import tenterbook.web.record.HistoryPages;
import tenterbook.web.record.RecordApis;
import tenterbook.web.studio.ErasurePages;
import tenterbook.web.studio.PeoplePages;
import tenterbook.web.studio.StudioPages;
import tenterbook.web.studio.WorkPages;
import tenterbook.words.Message;

/** The server: on loopback alone, guarded, with its routes and its answers to what goes wrong. */
public final class Server implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Server.class);

    /** The most one upload may hold: forty photographs of the largest size. */
    private static final long MOST_UPLOADED = 40 * Originals.LIMIT_BYTES;

    /** Larger files are cut off while they arrive; one between the two limits is refused alone, and its neighbours kept. */
    private static final long MOST_ARRIVING = 4 * Originals.LIMIT_BYTES;

    /** The most a form without files may hold, in bytes. */
    private static final long MOST_TYPED = 4L << 20;

    /** The most fields one form may have: those of some thousand photographs. */
    private static final int MOST_FIELDS = 20_000;

    /** The most an address may hold, with the other headers, in bytes. */
    private static final int LONGEST_ADDRESS = 64 << 10;

    private final Javalin javalin;

    private Server(Javalin javalin) {
        this.javalin = javalin;
    }

    /**
     * Starts serving on {@code http://127.0.0.1:port}.
     *
     * @param port 0 for any free one
     */
    public static Server start(Site site, int port) {
        Javalin javalin = Javalin.create(config -> configure(config, site));
        javalin.start("127.0.0.1", port);
        return new Server(javalin);
    }

    /** Whether nothing listens on a loopback port yet. */
    public static boolean free(int port) {
        try (ServerSocket probe = new ServerSocket(port, 1, InetAddress.getByName("127.0.0.1"))) {
            return probe.isBound();
        } catch (java.io.IOException e) {
            return false;
        }
    }

    public int port() {
        return javalin.port();
    }

    /** Every route, as in {@code GET /api/pieces/{number}}, for comparing with what is described. */
    public List<String> routes() {
        return javalin.unsafe.internalRouter.allHttpHandlers().stream()
                .map(handler -> handler.endpoint.method + " " + handler.endpoint.path)
                .toList();
    }

    private static void configure(JavalinConfig config, Site site) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.http.maxRequestSize = MOST_TYPED;
        config.http.generateEtags = false;
        // Addresses name pieces: the thousand whose labels can be printed at once, each with its comma.
        config.jetty.modifyHttpConfiguration(http -> {
            http.setRequestHeaderSize(LONGEST_ADDRESS);
            http.setResponseHeaderSize(LONGEST_ADDRESS);
        });
        config.jetty.modifyServletContextHandler(handler -> handler.setMaxFormKeys(MOST_FIELDS));
        config.router.javaLangErrorHandler(Server::tell);
        config.jetty.multipartConfig.maxFileSize(MOST_ARRIVING >> 20, SizeUnit.MB);
        config.jetty.multipartConfig.maxTotalRequestSize(MOST_UPLOADED >> 20, SizeUnit.MB);
        config.jetty.multipartConfig.maxInMemoryFileSize(1, SizeUnit.MB);
        config.jsonMapper(new io.javalin.json.JavalinJackson(AnswerJson.mapper(), false));
        for (String folder : new String[] {"style", "script", "fonts"}) {
            config.staticFiles.add(files -> {
                files.hostedPath = "/" + folder;
                files.directory = "/web/" + folder;
                files.location = Location.CLASSPATH;
                files.headers = Map.of("Cache-Control", "no-cache", "X-Content-Type-Options", "nosniff");
            });
        }
        config.staticFiles.enableWebjars();
        RoutesConfig routes = config.routes;
        routes.before(ctx -> Words.writeFor(site.archive().conventions()));
        routes.before(Guard::check);
        routes.before(ctx -> {
            if (ctx.isFormUrlencoded()
                    && ctx.body().chars().filter(each -> each == '&').count() >= MOST_FIELDS) {
                tooManyFields(ctx, site);
                ctx.skipRemainingHandlers();
            }
        });
        routes.before(FormEncoding::check);
        PhotoRegistration photos = new PhotoRegistration(site.archive(), site.intake());
        new PieceListPages(site).routes(routes);
        new PiecePages(site, photos).routes(routes);
        PhotoMeasuring measuring = new PhotoMeasuring(site);
        PhotoPages photoPages = new PhotoPages(site, photos, measuring);
        photoPages.routes(routes);
        new ArrivalPages(site).routes(routes);
        new WaitingPages(site).routes(routes);
        new CalibrationPages(site, measuring, photoPages).routes(routes);
        new ClothPages(site, photoPages).routes(routes);
        new FadingPages(site, measuring).routes(routes);
        new LayerPages(site, measuring).routes(routes);
        new ColourPages(site).routes(routes);
        new DipPages(site).routes(routes);
        new BoardPages(site).routes(routes);
        new ClampingPages(site).routes(routes);
        new MaterialPages(site).routes(routes);
        new PeoplePages(site).routes(routes);
        new ErasurePages(site).routes(routes);
        new ConditionPages(site, photos).routes(routes);
        new ConditionReportPages(site).routes(routes);
        new PrintPages(site, photos).routes(routes);
        new DocumentPages(site).routes(routes);
        new VerifyPages(site).routes(routes);
        new IssuedPages(site).routes(routes);
        new SheetPages(site).routes(routes);
        new StudioPages(site).routes(routes);
        new HistoryPages(site).routes(routes);
        new WorkPages(site).routes(routes);
        new DraftPages(site).routes(routes);
        new PieceApi(site, photos).routes(routes);
        RecordApis.routes(routes, site);
        new LabelApi(site).routes(routes);
        new ConditionApi(site).routes(routes);
        new ColourApi().routes(routes);
        new PhotoColourApi(site).routes(routes);
        failures(routes, site);
    }

    private static void failures(RoutesConfig routes, Site site) {
        routes.exception(
                PaperErased.class, (e, ctx) -> tell(ctx, site, 410, w("failure.erased-on-request"), Words.sentence(e)));
        routes.exception(
                Guard.Refused.class,
                (e, ctx) -> tell(ctx, site, e.status(), w("failure.not-from-here"), Words.sentence(e)));
        routes.exception(
                NotFound.class, (e, ctx) -> tell(ctx, site, 404, w("failure.not-in-this-archive"), Words.sentence(e)));
        routes.exception(
                Conflict.class,
                (e, ctx) -> tell(
                        ctx,
                        site,
                        409,
                        w("failure.saved-by-someone-else"),
                        ctx.path().startsWith("/api/") ? RecordApis.sentence(e, ctx) : Words.sentence(e)));
        routes.exception(
                StillReferenced.class, (e, ctx) -> tell(ctx, site, 409, w("failure.still-in-use"), Words.sentence(e)));
        routes.exception(
                PhotoRefused.class,
                (e, ctx) -> tell(ctx, site, 422, w("failure.photograph-not-added"), Words.sentence(e)));
        routes.exception(
                LabelBlocked.class, (e, ctx) -> tell(ctx, site, 422, w("failure.label-held-back"), Words.sentence(e)));
        RecordApis.failures(routes);
        routes.exception(
                IllegalArgumentException.class,
                (e, ctx) -> tell(ctx, site, 400, w("failure.not-understood"), Words.sentence(e)));
        routes.exception(
                ArchiveProblem.class, (e, ctx) -> tell(ctx, site, 500, w("failure.the-archive"), Words.sentence(e)));
        routes.exception(HttpResponseException.class, (e, ctx) -> {
            if (e.getStatus() == 404) {
                noPage(ctx, site);
                return;
            }
            String said = e.getStatus() == 413
                    ? w("failure.sent-too-large", "megabytes", Originals.LIMIT_BYTES >> 20, "typing", MOST_TYPED >> 20)
                    : e.getMessage();
            tell(ctx, site, e.getStatus(), w("failure.not-understood"), said);
        });
        routes.exception(Exception.class, (e, ctx) -> {
            if (tooManyParts(e)) {
                tooManyFields(ctx, site);
                return;
            }
            if (tooLarge(e)) {
                tell(
                        ctx,
                        site,
                        413,
                        w("failure.too-large"),
                        w("failure.photograph-too-large", "megabytes", Originals.LIMIT_BYTES >> 20));
                return;
            }
            if (brokenOff(e)) {
                tell(ctx, site, 400, w("failure.not-understood"), w("failure.broke-off"));
                return;
            }
            LOG.error("{} {} failed", ctx.method(), ctx.path(), e);
            if (e instanceof FileSystemException || noRoom(e)) {
                tell(
                        ctx,
                        site,
                        500,
                        w("failure.the-disk"),
                        w("failure.disk-not-written", "why", String.valueOf(e.getMessage())));
                return;
            }
            tell(ctx, site, 500, w("failure.something-went-wrong"), mistake(e, HandlerType.POST.equals(ctx.method())));
        });
        routes.error(404, ctx -> {
            String told = ctx.result();
            if (told == null || told.isBlank() || told.startsWith("Endpoint") || told.startsWith("Not Found")) {
                noPage(ctx, site);
            }
        });
    }

    private static void noPage(Context ctx, Site site) {
        NotFound none = new NotFound(Message.of("not-here.page", "path", ctx.path()));
        tell(ctx, site, 404, w("failure.not-in-this-archive"), Words.sentence(none));
    }

    /** @param sent whether something typed was sent, which a form to go back to has kept */
    static String mistake(Exception e, boolean sent) {
        return w("failure.mistake", "error", e.getClass().getSimpleName(), "sent", sent);
    }

    /** What Java itself gives up on, such as a photograph too large for the memory there is. */
    private static void tell(HttpServletResponse answer, Error e) {
        LOG.error("A request failed", e);
        String what = e instanceof OutOfMemoryError
                ? w("failure.no-memory")
                : w("failure.mistake-of-java", "error", e.getClass().getSimpleName());
        answer.setStatus(500);
        answer.setContentType("text/plain; charset=utf-8");
        try {
            answer.getOutputStream().write(what.getBytes(StandardCharsets.UTF_8));
        } catch (IOException | IllegalStateException broken) {
            LOG.info("The answer was not read", broken);
        }
    }

    private static void tooManyFields(Context ctx, Site site) {
        tell(ctx, site, 413, w("failure.too-large"), w("failure.too-many-fields", "most", MOST_FIELDS));
    }

    /** As the server's library says it of a form with files. */
    private static boolean tooManyParts(Throwable e) {
        return Stream.iterate(e, Objects::nonNull, Throwable::getCause)
                .anyMatch(cause -> String.valueOf(cause.getMessage()).contains("many keys"));
    }

    private static boolean tooLarge(Throwable e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            String message = String.valueOf(cause.getMessage());
            if (message.contains("too large") || message.contains("exceeds") || message.contains("max length")) {
                return true;
            }
        }
        return false;
    }

    private static boolean noRoom(Exception e) {
        return e instanceof IOException && String.valueOf(e.getMessage()).contains("space");
    }

    /** The form's own encoding is at fault, as when a connection breaks off in the middle of a file. */
    private static boolean brokenOff(Throwable e) {
        return Stream.iterate(e, Objects::nonNull, Throwable::getCause)
                .anyMatch(cause ->
                        cause instanceof EOFException || cause instanceof HttpException http && http.getCode() == 400);
    }

    /** One failure, one sentence: as JSON for programs and scripts, as a page for people. */
    private static void tell(Context ctx, Site site, int status, String title, String sentence) {
        ctx.status(status);
        boolean json = ctx.path().startsWith("/api/")
                || ctx.path().equals("/photos")
                || String.valueOf(ctx.header("Accept")).startsWith("application/json");
        if (json) {
            ctx.json(Map.of("error", sentence == null ? title : sentence));
        } else {
            Html.show(
                    ctx,
                    "message",
                    Map.of("page", site.page(title, "", ""), "sentence", sentence == null ? title : sentence));
        }
    }

    @Override
    public void close() {
        javalin.stop();
    }
}
