package tenterbook.web.studio;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.piece.Party;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;
import tenterbook.web.page.Html;
import tenterbook.web.record.FactLine;
import tenterbook.web.record.RecordEditor;
import tenterbook.web.record.RecordView;

/** Galleries, buyers and borrowers: private, and shown only here. */
public final class PeoplePages {
    private final Site site;
    private final RecordEditor<Party> editor;

    public PeoplePages(Site site) {
        this.site = site;
        this.editor = new RecordEditor<>(
                site,
                new Forms(site::currency).people(),
                new RecordEditor.About("party-form", "people", "/people"),
                party -> "/people/" + party.id(),
                Map::of);
    }

    public void routes(RoutesConfig routes) {
        routes.get("/people", this::list);
        editor.routes(routes, ctx -> Form.empty());
        routes.get("/people/{id}", this::show);
    }

    private void list(Context ctx) {
        Html.show(
                ctx,
                "people",
                Map.of(
                        "page", site.page(ctx, w("people.title"), "people"),
                        "parties", site.records(Kinds.PARTY)));
    }

    private void show(Context ctx) {
        String id = ctx.pathParam("id");
        Party party = site.saved(Kinds.PARTY, id).record();
        List<FactLine> facts = List.of(
                new FactLine(w("people.what-they-are"), FactLine.or(party.kind())),
                new FactLine(w("people.contact-private"), FactLine.or(party.contact())),
                new FactLine(w("people.notes"), FactLine.or(party.notes())));
        RecordView view = new RecordView(
                "party",
                party.title(),
                "/people/" + id,
                Kinds.PARTY.name(),
                id,
                facts,
                "/?holder=" + id,
                site.archive().ledger().referencedBy(Kinds.PARTY.key(id)).stream()
                        .limit(60)
                        .toList());
        Html.show(ctx, "record", Map.of("page", site.page(ctx, party.title(), "people"), "view", view));
    }
}
