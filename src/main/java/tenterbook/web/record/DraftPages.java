package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Optional;
import tenterbook.archive.Kinds;
import tenterbook.ledger.beside.Drafts;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Visitor;
import tenterbook.words.Message;

/** Keeps what is being typed, as it is typed. */
public final class DraftPages {
    private final Site site;

    public DraftPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.post("/drafts/{kind}", ctx -> keep(ctx, ctx.pathParam("kind") + "/"));
        routes.post("/drafts/{kind}/{id}", ctx -> keep(ctx, ctx.pathParam("kind") + "/" + ctx.pathParam("id")));
        routes.post("/discard-draft", this::discard);
    }

    private void keep(Context ctx, String name) {
        boolean known = Kinds.ALL.stream().anyMatch(kind -> name.startsWith(kind.name() + "/"));
        if (!known) {
            throw new NotFound(Message.of("not-here.form"));
        }
        Form form = Form.of(ctx.formParamMap());
        site.ledger().drafts().keep(Visitor.now().own(name), form.encoded());
        ctx.status(204);
    }

    private void discard(Context ctx) {
        String name = Optional.ofNullable(ctx.formParam("draft")).orElse("");
        Drafts drafts = site.ledger().drafts();
        Visitor visitor = Visitor.now();
        drafts.find(visitor.own(name))
                .ifPresent(draft -> drafts.keep(visitor.own(DraftPlace.ASIDE + name), draft.body()));
        drafts.discard(visitor.own(name));
        FlashMessage.andGo(ctx, w("form.put-aside"), DraftPlace.of(name).form());
    }
}
