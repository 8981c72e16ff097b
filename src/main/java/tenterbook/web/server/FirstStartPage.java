package tenterbook.web.server;

import static tenterbook.web.page.Words.w;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.Html;
import tenterbook.web.page.LanguageChoice;
import tenterbook.web.page.Visitor;
import tenterbook.web.page.Words;
import tenterbook.web.studio.CloseButton;
import tenterbook.words.Conventions;
import tenterbook.words.Explained;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * The page of a start for which no archive is there yet, or none that can be opened: it shows where the archive will be kept and lets
 * another folder be chosen. Nothing is created before the choice. A server of its own on loopback, guarded as the other.
 */
public final class FirstStartPage implements AutoCloseable {
    /** What a new archive begins with; a folder that has an archive is opened as it is. */
    public enum Beginning {
        EMPTY,
        SAMPLE
    }

    /** What is done with the choice. */
    @FunctionalInterface
    public interface Choice {
        /**
         * Prepares and serves the archive.
         *
         * @param folder as it was typed
         * @return the address at which the archive is served now
         * @throws RuntimeException an {@link Explained} one, where the page is to be shown again with the reason
         */
        String made(String folder, Beginning beginning);
    }

    private final Javalin javalin;
    private final Path proposed;
    private final @Nullable Written problem;
    private final Choice choice;
    private @Nullable String served;

    private FirstStartPage(Path proposed, @Nullable Written problem, Choice choice, Runnable end) {
        this.proposed = proposed;
        this.problem = problem;
        this.choice = choice;
        this.javalin = Javalin.create(config -> configure(config, new CloseButton(end)));
    }

    /**
     * Shows the page on any free port.
     *
     * @param problem why the proposed folder was not opened; null on a first start
     * @param end what the button that closes the program asks for
     */
    public static FirstStartPage show(Path proposed, @Nullable Written problem, Choice choice, Runnable end) {
        FirstStartPage page = new FirstStartPage(proposed, problem, choice, end);
        page.javalin.start("127.0.0.1", 0);
        return page;
    }

    public String address() {
        return "http://127.0.0.1:" + javalin.port();
    }

    private void configure(JavalinConfig config, CloseButton close) {
        Server.general(config);
        Server.ownFiles(config, "style", "fonts");
        config.routes.before(ctx -> {
            Words.writeFor(() -> Conventions.english().in(LanguageChoice.of(ctx)));
            Visitor.is(Visitor.STRANGER);
            Guard.HEADERS.forEach(ctx::header);
            Guard.checkLoopback(ctx);
            if (Guard.changing(ctx)) {
                FormEncoding.check(ctx);
            }
        });
        config.routes.get("/", this::asked);
        config.routes.post("/", this::chosen);
        LanguageChoice.routes(config.routes);
        close.routes(config.routes);
        config.routes.exception(Guard.Refused.class, (e, ctx) -> {
            ctx.status(e.status());
            ctx.result(w(e.explanation()));
        });
        config.routes.exception(Refusal.class, (e, ctx) -> {
            ctx.status(400);
            ctx.result(w(e.explanation()));
        });
    }

    private synchronized void asked(Context ctx) {
        if (served != null) {
            ctx.redirect(served);
            return;
        }
        ask(ctx, proposed.toString(), Beginning.EMPTY, problem == null ? "" : w(problem));
    }

    /** One at a time, so that a second press does not open the archive twice. */
    private synchronized void chosen(Context ctx) {
        String folder = Objects.requireNonNullElse(ctx.formParam("folder"), "").strip();
        Beginning beginning = Arrays.stream(Beginning.values())
                .filter(each -> each.name().equalsIgnoreCase(ctx.formParam("beginning")))
                .findFirst()
                .orElse(Beginning.EMPTY);
        try {
            if (served == null) {
                served = choice.made(folder, beginning);
            }
            // Not a redirect: a form may lead to its own server alone.
            Html.show(ctx, "first-start-done", Map.of("address", served));
        } catch (RuntimeException e) {
            if (!(e instanceof Explained)) {
                LoggerFactory.getLogger(FirstStartPage.class).error("The archive was not opened", e);
            }
            ctx.status(e instanceof Explained ? 422 : 500);
            ask(ctx, folder, beginning, Words.sentence(e));
        }
    }

    private static void ask(Context ctx, String folder, Beginning beginning, String problem) {
        Map<String, Object> values = new HashMap<>();
        values.put("folder", folder);
        values.put("sample", beginning == Beginning.SAMPLE);
        values.put("problem", problem);
        Html.show(ctx, "first-start", values);
    }

    @Override
    public void close() {
        javalin.stop();
    }
}
