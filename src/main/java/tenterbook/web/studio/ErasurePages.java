package tenterbook.web.studio;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tenterbook.archive.ErasureReport;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Erased;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Revision;
import tenterbook.web.Site;
import tenterbook.web.job.Job;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Conventions;
import tenterbook.words.Message;

/** Erases a person on request. Asks for the name of the record once more, since nothing brings it back. */
public final class ErasurePages {
    /** For an index of 100,000 pieces, several times over. */
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(10);

    private final Site site;

    public ErasurePages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/people/{id}/erase", ctx -> show(ctx, w("erasure.usual-reason"), "", "", ""));
        routes.post("/people/{id}/erase", this::erase);
    }

    /**
     * The page before it is done.
     *
     * @param id of the party's record
     * @param revisions how many versions it has
     * @param reason as typed
     * @param confirm as typed
     * @param reasonProblem why the reason was not taken, or empty
     * @param problem why the confirmation was not taken, or empty
     */
    public record ErasureView(
            String id, int revisions, String reason, String reasonProblem, String confirm, String problem) {}

    private void show(Context ctx, String reason, String reasonProblem, String confirm, String problem) {
        String id = ctx.pathParam("id");
        List<Revision> history = site.archive().ledger().history(Kinds.PARTY.key(id));
        if (history.isEmpty()) {
            throw NotFound.of(Kinds.PARTY, id);
        }
        ErasureView view = new ErasureView(id, history.size(), reason, reasonProblem, confirm, problem);
        Html.show(ctx, "erase", Map.of("page", site.page(ctx, w("erasure.title"), "people"), "view", view));
    }

    private void erase(Context ctx) {
        String id = ctx.pathParam("id");
        String reason = String.valueOf(ctx.formParam("reason")).strip();
        String confirm = String.valueOf(ctx.formParam("confirm")).strip();
        if (site.archive().ledger().history(Kinds.PARTY.key(id)).isEmpty()) {
            throw NotFound.of(Kinds.PARTY, id);
        }
        String reasonProblem =
                site.archive().ledger().names(Kinds.PARTY, id, reason) ? w("ledger.erase.reason-names") : "";
        String problem = confirm.equals(id) ? "" : w("erasure.confirm-missing", "id", id);
        if (!reasonProblem.isEmpty() || !problem.isEmpty()) {
            ctx.status(422);
            show(ctx, reason, reasonProblem, confirm, problem);
            return;
        }
        Conventions reader = Words.conventions();
        Job job = site.jobs().start(w("erasure.working"), progress -> run(id, reason, reader));
        ctx.redirect("/work/" + job.id(), HttpStatus.SEE_OTHER);
    }

    private Job.Outcome run(String id, String reason, Conventions reader) {
        Erased erased = site.archive()
                .ledger()
                .erase(site.author(), Kinds.PARTY, id, reason.isEmpty() ? w("erasure.usual-reason") : reason);
        // From here on nothing stops the work: both are rebuilt without the person, now or at the next start.
        site.tags().bringUp(Progress.UNWATCHED);
        boolean indexed = site.index().await(LONGEST_WAIT);
        ErasureReport report = ErasureReport.of(erased);
        return new Job.Outcome(
                ErasureReport.heading(erased).in(reader),
                Stream.concat(
                                report.done().stream(),
                                report.left().stream().map(left -> Message.of("erasure.not-erased", "what", left)))
                        .map(sentence -> sentence.in(reader))
                        .toList(),
                indexed ? List.of() : List.of(Message.of("erasure.index-later").in(reader)),
                "/people");
    }
}
