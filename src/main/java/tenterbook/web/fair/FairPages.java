package tenterbook.web.fair;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.documents.PhotoSource;
import tenterbook.documents.issue.PaperPdf;
import tenterbook.ledger.Saved;
import tenterbook.piece.fair.CustomsPurpose;
import tenterbook.piece.fair.Fair;
import tenterbook.piece.fair.FairKind;
import tenterbook.piece.fair.FairTask;
import tenterbook.typeset.MergedPdf;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;
import tenterbook.web.found.ChosenPieces;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.Uncached;
import tenterbook.web.print.IssuedPaperView;
import tenterbook.web.print.PiecePicker;
import tenterbook.web.record.Choices;
import tenterbook.web.record.FactLine;
import tenterbook.web.record.RecordEditor;
import tenterbook.web.record.RecordView;
import tenterbook.words.Written;

/** Fairs: the list, one with its pieces and its checklist, choosing pieces by picture, and the papers together. */
public final class FairPages {
    private static final String SECTION = "people";

    private final Site site;
    private final RecordEditor<Fair> editor;

    public FairPages(Site site) {
        this.site = site;
        this.editor = new RecordEditor<>(
                site,
                new Forms(site::currency).fairs(),
                new RecordEditor.About("fair-form", SECTION, "/fairs"),
                fair -> "/fairs/" + fair.id(),
                () -> Map.of("kinds", Choices.words(FairKind.values()), "purposes", purposes()));
    }

    /** The purposes for customs, by their codes. */
    public static List<Choices.Choice> purposes() {
        return Arrays.stream(CustomsPurpose.values())
                .map(each -> new Choices.Choice(each.code(), w(each)))
                .toList();
    }

    public void routes(RoutesConfig routes) {
        routes.get("/fairs", this::list);
        routes.get("/fairs/new", ctx -> editor.showNew(ctx, () -> start(ctx)));
        routes.post("/fairs", this::saveNew);
        routes.get("/fairs/{id}", this::show);
        routes.get("/fairs/{id}/edit", ctx -> editor.showEdit(ctx, ctx.pathParam("id")));
        routes.post("/fairs/{id}/edit", ctx -> editor.save(ctx, ctx.pathParam("id")));
        routes.post("/fairs/{id}/withdraw", ctx -> editor.withdraw(ctx, ctx.pathParam("id")));
        routes.get("/fairs/{id}/pieces", this::choose);
        routes.post("/fairs/{id}/pieces", this::take);
        routes.post("/fairs/{id}/tasks", this::tasks);
        routes.get("/fairs/{id}/papers", this::papers);
        routes.post("/fairs/{id}/papers", this::issue);
        routes.get("/fairs/{id}/papers.pdf", this::together);
    }

    private String next() {
        return Kinds.FAIR_NUMBERS
                .next(
                        start -> site.ledger().idsEverUsed(Kinds.FAIR, start),
                        site.today().getYear())
                .value();
    }

    /** For the pieces in the address. */
    private Form start(Context ctx) {
        Form form = Form.empty().put("id", next()).put("kind", FairKind.FAIR);
        int at = 0;
        for (String number : ChosenPieces.named(site, ctx.queryParamMap())) {
            form.put("pieces." + at++ + ".piece", number);
        }
        return form;
    }

    private void saveNew(Context ctx) {
        Form form = Form.of(ctx.formParamMap());
        if (!form.has("id")) {
            form.put("id", next());
        }
        editor.save(ctx, "", form);
    }

    private void list(Context ctx) {
        List<Fair> fairs = site.records(Kinds.FAIR).stream()
                .sorted(Fair.IN_TIME.reversed())
                .toList();
        Html.show(ctx, "fairs", Map.of("page", site.page(ctx, w("fair.title"), SECTION), "fairs", fairs));
    }

    private Saved<Fair> fair(Context ctx) {
        return site.saved(Kinds.FAIR, ctx.pathParam("id"));
    }

    private void show(Context ctx) {
        Fair fair = fair(ctx).record();
        List<FactLine> facts = new ArrayList<>();
        facts.add(new FactLine(w("fair.what"), w(fair.kind())));
        facts.add(new FactLine(w("fair.place"), FactLine.or(fair.place())));
        facts.add(new FactLine(w("fair.from"), w(fair.from())));
        facts.add(new FactLine(w("fair.until"), w(fair.until())));
        facts.add(new FactLine(w("fair.sold-in"), FactLine.or(fair.soldIn())));
        facts.add(new FactLine(w("fair.price-statement"), FactLine.or(fair.priceStatement())));
        facts.add(new FactLine(w("fair.purpose-for-customs"), FactLine.or(fair.purpose())));
        facts.add(new FactLine(w("fair.notes"), FactLine.or(fair.notes())));
        RecordView view =
                RecordView.of(site, Kinds.FAIR.key(fair.id().value()), w(Kinds.FAIR.called()), fair.title(), facts, "");
        Html.show(
                ctx,
                "fair",
                Map.of(
                        "page",
                        site.page(ctx, view.title(), SECTION),
                        "view",
                        view,
                        "standing",
                        FairStanding.of(site, fair)));
    }

    /** Opened with the pieces that are chosen already; a search goes on with those that are ticked. */
    private void choose(Context ctx) {
        Fair fair = fair(ctx).record();
        Map<String, List<String>> parameters = new HashMap<>(ctx.queryParamMap());
        if (parameters.putIfAbsent("find", List.of("")) == null) {
            parameters.putIfAbsent(
                    "pieces",
                    fair.pieces().stream().map(each -> each.piece().value()).toList());
        }
        Html.show(
                ctx,
                "fair-pieces",
                Map.of(
                        "page",
                        site.page(ctx, w("fair.choose-for", "fair", fair.title()), SECTION),
                        "fair",
                        fair,
                        "picker",
                        PiecePicker.of(site, parameters, ChosenPieces.named(site, parameters))));
    }

    private void take(Context ctx) {
        Saved<Fair> saved = fair(ctx);
        ChosenPieces.LookedUp looked = ChosenPieces.lookUp(site, ChosenPieces.named(site, ctx.formParamMap()));
        if (looked.unknown().isEmpty()) {
            save(
                    saved,
                    saved.record()
                            .withPieces(looked.pieces().stream()
                                    .map(piece -> piece.record().number())
                                    .toList()));
        }
        back(ctx, saved.record(), looked.trouble());
    }

    private void tasks(Context ctx) {
        Saved<Fair> saved = fair(ctx);
        Set<String> done = Set.copyOf(ctx.formParams("done"));
        List<FairTask> lines = new ArrayList<>();
        for (int i = 0; i < saved.record().tasks().size(); i++) {
            lines.add(saved.record().tasks().get(i).marked(done.contains(Integer.toString(i))));
        }
        Fair after = saved.record().withTasks(lines);
        String more = ctx.formParam("more");
        save(saved, more == null || more.isBlank() ? after : after.withTask(more));
        back(ctx, saved.record(), "");
    }

    private void save(Saved<Fair> before, Fair after) {
        site.write(act -> act.save(Kinds.FAIR, after, before.version(), ""));
    }

    private static void back(Context ctx, Fair fair, String trouble) {
        FlashMessage.andGo(ctx, trouble.isEmpty() ? w("fair.saved") : trouble, "/fairs/" + fair.id());
    }

    /** A paper that was issued just now. */
    public record IssuedLine(String name, String id) {}

    private void papers(Context ctx) throws IOException {
        Fair fair = fair(ctx).record();
        FairPapers papers = new FairPapers(site, fair);
        Html.show(
                ctx,
                "fair-papers",
                Map.of(
                        "page",
                        site.page(ctx, w("fair.papers-of", "fair", fair.title()), SECTION),
                        "fair",
                        fair,
                        "papers",
                        papers.all(),
                        "leftOut",
                        papers.leftOut(),
                        "issued",
                        issued(ctx).stream()
                                .map(paper -> new IssuedLine(Written.capital(IssuedPaperView.word(paper)), paper.id()))
                                .toList()));
    }

    private List<IssuedPaper> issued(Context ctx) {
        return ctx.queryParams("issued").stream()
                .flatMap(list -> Arrays.stream(list.split(",")))
                .filter(id -> !id.isBlank())
                .map(id -> site.saved(Kinds.ISSUED_PAPER, id).record())
                .toList();
    }

    /** The papers and their files are in the archive before the answer. */
    private void issue(Context ctx) throws IOException {
        Fair fair = fair(ctx).record();
        String ids =
                new FairPapers(site, fair).issue().stream().map(IssuedPaper::id).collect(Collectors.joining(","));
        ctx.redirect("/fairs/" + fair.id() + "/papers?issued=" + ids, HttpStatus.SEE_OTHER);
    }

    private void together(Context ctx) throws IOException {
        Fair fair = fair(ctx).record();
        List<byte[]> files = new ArrayList<>();
        for (IssuedPaper paper : issued(ctx)) {
            files.add(PaperPdf.of(site.archive(), paper, PhotoSource.of(site.previews())));
        }
        if (files.isEmpty()) {
            FlashMessage.andGo(ctx, w("fair.nothing-issued"), "/fairs/" + fair.id() + "/papers");
            return;
        }
        Uncached.pdf(ctx, fair.id().value(), MergedPdf.of(files));
    }
}
