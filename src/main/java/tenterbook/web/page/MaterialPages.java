package tenterbook.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tenterbook.archive.Kinds;
import tenterbook.ledger.RecordKey;
import tenterbook.ledger.Saved;
import tenterbook.material.Cloth;
import tenterbook.material.Lot;
import tenterbook.material.Role;
import tenterbook.material.Source;
import tenterbook.measure.QuantityWords;
import tenterbook.web.Html;
import tenterbook.web.NotHere;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;

/** Bolts of cloth and lots of dye, mordant and assistants. */
public final class MaterialPages {
    private final Site site;
    private final Editor<Cloth> cloths;
    private final Editor<Lot> lots;

    public MaterialPages(Site site) {
        this.site = site;
        this.cloths = new Editor<>(
                site,
                new Forms(site::currency).cloths(),
                new Editor.About("cloth-form", "materials", "/cloths", "bolt of cloth"),
                cloth -> "/cloths/" + cloth.id(),
                Map::of);
        this.lots = new Editor<>(
                site,
                new Forms(site::currency).lots(),
                new Editor.About("lot-form", "materials", "/lots", "lot"),
                lot -> "/lots/" + lot.id(),
                () -> Map.of("roles", Choices.words(Role.values()), "sources", Choices.words(Source.values())));
    }

    public void routes(RoutesConfig routes) {
        routes.get("/materials", this::list);
        routes.get("/cloths/new", ctx -> cloths.showNew(ctx, Form::empty));
        routes.post("/cloths", ctx -> cloths.save(ctx, ""));
        routes.get("/cloths/{id}", this::cloth);
        routes.get("/cloths/{id}/edit", ctx -> cloths.showEdit(ctx, ctx.pathParam("id")));
        routes.post("/cloths/{id}/edit", ctx -> cloths.save(ctx, ctx.pathParam("id")));
        routes.post("/cloths/{id}/withdraw", ctx -> cloths.withdraw(ctx, ctx.pathParam("id")));
        routes.get("/lots/new", ctx -> lots.showNew(ctx, () -> Form.empty().put("role", role(ctx))));
        routes.post("/lots", ctx -> lots.save(ctx, ""));
        routes.get("/lots/{id}", this::lot);
        routes.get("/lots/{id}/edit", ctx -> lots.showEdit(ctx, ctx.pathParam("id")));
        routes.post("/lots/{id}/edit", ctx -> lots.save(ctx, ctx.pathParam("id")));
        routes.post("/lots/{id}/withdraw", ctx -> lots.withdraw(ctx, ctx.pathParam("id")));
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
                        "page", site.page(ctx, "Materials", "materials"),
                        "cloths",
                                site.archive().ledger().all(Kinds.CLOTH).stream()
                                        .map(Saved::record)
                                        .toList(),
                        "lots",
                                site.archive().ledger().all(Kinds.LOT).stream()
                                        .map(Saved::record)
                                        .toList()));
    }

    private void cloth(Context ctx) {
        String id = ctx.pathParam("id");
        Saved<Cloth> saved = site.archive()
                .ledger()
                .find(Kinds.CLOTH, id)
                .orElseThrow(() -> new NotHere("bolt of cloth “" + id + "”"));
        Cloth cloth = saved.record();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Fibre content", content(cloth)));
        facts.add(new Fact("Who says so", Fact.or(cloth.contentEvidence())));
        facts.add(Fact.of("Areal weight", cloth.arealWeight()));
        facts.add(Fact.of("Width", cloth.width()));
        facts.add(new Fact("Weave", Fact.or(cloth.weave())));
        facts.add(new Fact("Finish", Fact.or(cloth.finish())));
        facts.add(new Fact("Woven in", Fact.or(cloth.wovenIn())));
        facts.add(new Fact("Supplier and lot", Fact.or((cloth.supplier() + " " + cloth.lot()).strip())));
        facts.add(new Fact("Bought", cloth.boughtOn().toString()));
        facts.add(Fact.of("How much", cloth.bought()));
        facts.add(new Fact(
                "Paid",
                cloth.price() == null ? Fact.NOT_RECORDED : cloth.price().toString()));
        facts.add(new Fact("Notes", Fact.or(cloth.notes())));
        record(
                ctx,
                new RecordView(
                        "bolt of cloth",
                        cloth.title(),
                        "/cloths/" + id,
                        Kinds.CLOTH.name(),
                        id,
                        facts,
                        "/?cloth=" + id,
                        users(Kinds.CLOTH.key(id))),
                "materials");
    }

    private static String content(Cloth cloth) {
        return cloth.content().isEmpty()
                ? Fact.NOT_RECORDED
                : cloth.content().stream()
                        .map(share ->
                                (share.percent() == null ? "some " : QuantityWords.number(share.percent()) + " % ")
                                        + share.fibre())
                        .collect(Collectors.joining(", "));
    }

    private void lot(Context ctx) {
        String id = ctx.pathParam("id");
        Saved<Lot> saved =
                site.archive().ledger().find(Kinds.LOT, id).orElseThrow(() -> new NotHere("lot “" + id + "”"));
        Lot lot = saved.record();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Used as", lot.role().toString()));
        facts.add(new Fact("Source", Fact.or(lot.source())));
        facts.add(new Fact("Organism or formula", Fact.or(lot.organism())));
        facts.add(new Fact("Part", Fact.or(lot.part())));
        facts.add(new Fact("Form", Fact.or(lot.form())));
        facts.add(new Fact("Supplier and lot", Fact.or((lot.supplier() + " " + lot.lot()).strip())));
        facts.add(new Fact("Bought or gathered", lot.boughtOn().toString()));
        facts.add(Fact.of("How much", lot.bought()));
        facts.add(new Fact(
                "Paid", lot.price() == null ? Fact.NOT_RECORDED : lot.price().toString()));
        facts.add(new Fact("Notes", Fact.or(lot.notes())));
        String search = lot.role() == Role.MORDANT ? "/?mordant=" : lot.role() == Role.DYE ? "/?dye=" : "/?q=";
        record(
                ctx,
                new RecordView(
                        lot.role().toString(),
                        lot.title(),
                        "/lots/" + id,
                        Kinds.LOT.name(),
                        id,
                        facts,
                        search + java.net.URLEncoder.encode(lot.name(), java.nio.charset.StandardCharsets.UTF_8),
                        users(Kinds.LOT.key(id))),
                "materials");
    }

    private List<RecordKey> users(RecordKey key) {
        return site.archive().ledger().namedBy(key).stream().limit(60).toList();
    }

    private void record(Context ctx, RecordView view, String section) {
        Html.show(ctx, "record", Map.of("page", site.page(ctx, view.title(), section), "view", view));
    }
}
