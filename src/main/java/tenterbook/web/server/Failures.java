package tenterbook.web.server;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import jakarta.servlet.http.HttpServletResponse;
import java.io.EOFException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.eclipse.jetty.http.HttpException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.documents.issue.PaperErased;
import tenterbook.imaging.Originals;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.labelling.LabelBlocked;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.StillReferenced;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.LedgerClock;
import tenterbook.ledger.file.ReadOnlyArchive;
import tenterbook.web.Site;
import tenterbook.web.form.TooManyFields;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Visitor;
import tenterbook.web.page.Words;
import tenterbook.web.record.RecordApis;
import tenterbook.words.Message;

/** Answers to failures, each one sentence with its status: a page for people, JSON for programs. */
final class Failures {
    private static final Logger LOG = LoggerFactory.getLogger(Failures.class);

    private final Site site;

    Failures(Site site) {
        this.site = site;
    }

    void routes(RoutesConfig routes) {
        routes.exception(
                PaperErased.class, (e, ctx) -> show(ctx, 410, w("failure.erased-on-request"), Words.sentence(e)));
        routes.exception(
                Guard.Refused.class, (e, ctx) -> show(ctx, e.status(), w("failure.not-from-here"), Words.sentence(e)));
        routes.exception(
                NotFound.class, (e, ctx) -> show(ctx, 404, w("failure.not-in-this-archive"), Words.sentence(e)));
        routes.exception(
                Conflict.class,
                (e, ctx) -> show(
                        ctx,
                        409,
                        w("failure.saved-by-someone-else"),
                        ctx.path().startsWith("/api/") ? RecordApis.sentence(e, ctx) : Words.sentence(e)));
        routes.exception(
                StillReferenced.class, (e, ctx) -> show(ctx, 409, w("failure.still-in-use"), Words.sentence(e)));
        routes.exception(
                PhotoRefused.class, (e, ctx) -> show(ctx, 422, w("failure.photograph-not-added"), Words.sentence(e)));
        routes.exception(
                LabelBlocked.class, (e, ctx) -> show(ctx, 422, w("failure.label-held-back"), Words.sentence(e)));
        routes.exception(TooManyFields.class, (e, ctx) -> show(ctx, 413, w("failure.too-large"), Words.sentence(e)));
        RecordApis.failures(routes);
        routes.exception(
                IllegalArgumentException.class,
                (e, ctx) -> show(ctx, 400, w("failure.not-understood"), Words.sentence(e)));
        routes.exception(ReadOnlyArchive.class, (e, ctx) -> show(ctx, 403, w("failure.read-only"), Words.sentence(e)));
        routes.exception(
                LedgerClock.Doubted.class, (e, ctx) -> show(ctx, 409, w("failure.which-day"), Words.sentence(e)));
        routes.exception(ArchiveProblem.class, (e, ctx) -> show(ctx, 500, w("failure.the-archive"), Words.sentence(e)));
        routes.exception(HttpResponseException.class, this::refusedByServer);
        routes.exception(Exception.class, this::unexpected);
        routes.error(404, ctx -> {
            String answer = ctx.result();
            if (answer == null || answer.isBlank() || answer.startsWith("Endpoint") || answer.startsWith("Not Found")) {
                noPage(ctx);
            }
        });
    }

    private void refusedByServer(HttpResponseException e, Context ctx) {
        if (e.getStatus() == 404) {
            noPage(ctx);
            return;
        }
        String sentence = e.getStatus() == 413
                ? w(
                        "failure.sent-too-large",
                        "megabytes",
                        Originals.LIMIT_BYTES >> 20,
                        "typing",
                        Server.MOST_TYPED >> 20)
                : e.getMessage();
        show(ctx, e.getStatus(), w("failure.not-understood"), sentence);
    }

    /** Failures known only by their causes; any other is logged and shown as a mistake of the program. */
    private void unexpected(Exception e, Context ctx) {
        if (tooManyParts(e)) {
            show(ctx, 413, w("failure.too-large"), Words.sentence(new TooManyFields()));
            return;
        }
        if (tooLarge(e)) {
            show(
                    ctx,
                    413,
                    w("failure.too-large"),
                    w("failure.photograph-too-large", "megabytes", Originals.LIMIT_BYTES >> 20));
            return;
        }
        if (brokenOff(e)) {
            show(ctx, 400, w("failure.not-understood"), w("failure.broke-off"));
            return;
        }
        LOG.error("{} {} failed", ctx.method(), ctx.path(), e);
        if (e instanceof FileSystemException || noRoom(e)) {
            show(ctx, 500, w("failure.the-disk"), w("failure.disk-not-written", "why", String.valueOf(e.getMessage())));
            return;
        }
        show(ctx, 500, w("failure.something-went-wrong"), mistake(e, HandlerType.POST.equals(ctx.method())));
    }

    private void noPage(Context ctx) {
        NotFound none = new NotFound(Message.of("not-here.page", "path", ctx.path()));
        show(ctx, 404, w("failure.no-such-page"), Words.sentence(none));
    }

    /** @param sent whether a form was sent, whose typing is kept */
    static String mistake(Exception e, boolean sent) {
        return w("failure.mistake", "error", e.getClass().getSimpleName(), "sent", sent);
    }

    /** An error of Java itself, for example a photograph too large for the memory. */
    static void answer(HttpServletResponse answer, Error e) {
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

    /** By the message of Jetty for a form with files. */
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

    /** The form is incomplete, for example where the connection breaks off in the middle of a file. */
    private static boolean brokenOff(Throwable e) {
        return Stream.iterate(e, Objects::nonNull, Throwable::getCause)
                .anyMatch(cause ->
                        cause instanceof EOFException || cause instanceof HttpException http && http.getCode() == 400);
    }

    /** JSON for programs and scripts, a page for people. */
    private void show(Context ctx, int status, String title, String sentence) {
        ctx.status(status);
        boolean json = ctx.path().startsWith("/api/")
                || ctx.path().equals("/photos")
                || String.valueOf(ctx.header("Accept")).startsWith("application/json");
        if (json) {
            ctx.json(Map.of("error", sentence == null ? title : sentence));
        } else if (Visitor.now().equals(Visitor.STRANGER)) {
            Html.show(ctx, "stranger", Map.of("sentence", sentence == null ? title : sentence));
        } else {
            Html.show(
                    ctx, "message", Map.of("page", site.page(title), "sentence", sentence == null ? title : sentence));
        }
    }
}
