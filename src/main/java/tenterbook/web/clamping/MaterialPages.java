package tenterbook.web.clamping;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.facts.LotStock;
import tenterbook.material.Cloth;
import tenterbook.material.Evidence;
import tenterbook.material.FibreShare;
import tenterbook.material.Lot;
import tenterbook.material.Role;
import tenterbook.material.Source;
import tenterbook.measure.NumberWords;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;
import tenterbook.web.page.Address;
import tenterbook.web.page.Html;
import tenterbook.web.record.Choices;
import tenterbook.web.record.FactLine;
import tenterbook.web.record.RecordEditor;
import tenterbook.web.record.RecordView;
import tenterbook.words.Joined;

/** Bolts of cloth and lots of dye, mordant and assistants. */
public final class MaterialPages {
    private final Site site;
    private final RecordEditor<Cloth> cloths;
    private final RecordEditor<Lot> lots;

    public MaterialPages(Site site) {
        this.site = site;
        this.cloths = new RecordEditor<>(
                site,
                new Forms(site::currency).cloths(),
                new RecordEditor.About("cloth-form", "materials", "/cloths"),
                cloth -> "/cloths/" + cloth.id(),
                () -> Map.of("evidence", Choices.words(Evidence.values()), "fibres", Choices.fibres()));
        this.lots = new RecordEditor<>(
                site,
                new Forms(site::currency).lots(),
                new RecordEditor.About("lot-form", "materials", "/lots"),
                lot -> "/lots/" + lot.id(),
                () -> Map.of("roles", Choices.words(Role.values()), "sources", Choices.words(Source.values())));
    }

    public void routes(RoutesConfig routes) {
        routes.get("/materials", this::list);
        cloths.routes(routes, ctx -> Form.empty());
        routes.get("/cloths/{id}", this::cloth);
        lots.routes(routes, ctx -> Form.empty().put("role", role(ctx)));
        routes.get("/lots/{id}", this::lot);
    }

    private static String role(Context ctx) {
        String role = ctx.queryParam("role");
        return role == null ? Role.DYE.toString() : role;
    }

    private void list(Context ctx) {
        Html.show(
                ctx,
                "materials",
                Map.of(
                        "page", site.page(ctx, w("material.title"), "materials"),
                        "cloths", site.records(Kinds.CLOTH),
                        "lots", site.records(Kinds.LOT)));
    }

    private void cloth(Context ctx) {
        String id = ctx.pathParam("id");
        Cloth cloth = site.saved(Kinds.CLOTH, id).record();
        List<FactLine> facts = new ArrayList<>();
        facts.add(new FactLine(w("material.fibre-content"), content(cloth)));
        facts.add(new FactLine(w("material.who-says-so"), FactLine.or(cloth.contentEvidence())));
        for (FibreShare share : cloth.content()) {
            if (share.evidence() != null || share.measured() != null) {
                facts.add(new FactLine(w("material.evidence-of", "fibre", share.fibre()), evidence(share)));
            }
        }
        facts.add(FactLine.of(w("material.areal-weight"), cloth.arealWeight()));
        facts.add(FactLine.of(w("material.width"), cloth.width()));
        facts.add(new FactLine(w("material.weave"), FactLine.or(cloth.weave())));
        facts.add(new FactLine(w("material.finish"), FactLine.or(cloth.finish())));
        facts.add(new FactLine(w("material.woven-in"), FactLine.or(cloth.wovenIn())));
        facts.add(new FactLine(
                w("material.supplier-and-lot"), FactLine.or((cloth.supplier() + " " + cloth.lot()).strip())));
        facts.add(new FactLine(w("material.bought"), w(cloth.boughtOn())));
        facts.add(FactLine.of(w("material.how-much"), cloth.bought()));
        facts.add(new FactLine(w("material.paid"), cloth.price() == null ? FactLine.notRecorded() : w(cloth.price())));
        facts.add(new FactLine(w("material.notes"), FactLine.or(cloth.notes())));
        show(
                ctx,
                RecordView.of(
                        site, Kinds.CLOTH.key(id), w(Kinds.CLOTH.called()), cloth.title(), facts, "/?cloth=" + id));
    }

    private static String evidence(FibreShare share) {
        String known = FactLine.or(share.evidence());
        return share.measured() == null
                ? known
                : w(
                        "material.evidence-and-measured",
                        "evidence",
                        known,
                        "measured",
                        NumberWords.percent(NumberWords.plain(share.measured())));
    }

    private static String content(Cloth cloth) {
        return cloth.content().isEmpty() ? FactLine.notRecorded() : w(new Joined(", ", cloth.content()));
    }

    private void lot(Context ctx) {
        String id = ctx.pathParam("id");
        Lot lot = site.saved(Kinds.LOT, id).record();
        List<FactLine> facts = new ArrayList<>();
        facts.add(new FactLine(w("material.used-as"), w(lot.role())));
        facts.add(new FactLine(w("material.source"), FactLine.or(lot.source())));
        facts.add(new FactLine(w("material.organism-or-formula"), FactLine.or(lot.organism())));
        facts.add(new FactLine(w("material.part"), FactLine.or(lot.part())));
        facts.add(new FactLine(w("material.form"), FactLine.or(lot.form())));
        facts.add(
                new FactLine(w("material.supplier-and-lot"), FactLine.or((lot.supplier() + " " + lot.lot()).strip())));
        facts.add(new FactLine(w("material.bought-or-gathered"), w(lot.boughtOn())));
        facts.add(FactLine.of(w("material.how-much"), lot.bought()));
        facts.add(new FactLine(
                w("material.left"), w(LotStock.of(site.archive(), lot).words())));
        facts.add(FactLine.of(w("material.warn-below"), lot.warnBelow()));
        facts.add(new FactLine(w("material.paid"), lot.price() == null ? FactLine.notRecorded() : w(lot.price())));
        facts.add(new FactLine(w("material.notes"), FactLine.or(lot.notes())));
        String search = switch (lot.role()) {
            case MORDANT -> "/?mordant=";
            case DYE -> "/?dye=";
            default -> "/?q=";
        };
        search += Address.encoded(lot.name());
        show(ctx, RecordView.of(site, Kinds.LOT.key(id), w(lot.role()), lot.title(), facts, search));
    }

    private void show(Context ctx, RecordView view) {
        Html.show(ctx, "record", Map.of("page", site.page(ctx, view.title(), "materials"), "view", view));
    }
}
