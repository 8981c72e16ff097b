package tenterbook.web.studio;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Map;
import tenterbook.web.Site;
import tenterbook.web.job.Job;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.words.Message;

/** Long work in progress, with a way to stop it. */
public final class WorkPages {
    private final Site site;

    public WorkPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/work/{id}", this::show);
        routes.post("/work/{id}/stop", ctx -> {
            job(ctx).stop();
            ctx.redirect("/work/" + ctx.pathParam("id"), io.javalin.http.HttpStatus.SEE_OTHER);
        });
    }

    private Job job(Context ctx) {
        return site.jobs()
                .find(ctx.pathParam("id"))
                .orElseThrow(() -> new NotFound(Message.of("not-here.work", "id", ctx.pathParam("id"))));
    }

    private void show(Context ctx) {
        Job job = job(ctx);
        if ("true".equals(ctx.header("HX-Request"))) {
            Html.show(ctx, "part/work", Map.of("job", job));
        } else {
            Html.show(ctx, "work", Map.of("page", site.page(ctx, job.title(), "studio"), "job", job));
        }
    }
}
