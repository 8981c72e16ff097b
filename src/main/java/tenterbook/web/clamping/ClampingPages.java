package tenterbook.web.clamping;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Saved;
import tenterbook.material.Role;
import tenterbook.measure.QuantityWords;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.Fold;
import tenterbook.recipe.ScaledCharge;
import tenterbook.recipe.Step;
import tenterbook.recipe.StepKind;
import tenterbook.web.Site;
import tenterbook.web.form.ClampingForm;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;
import tenterbook.web.page.Html;
import tenterbook.web.record.Choices;
import tenterbook.web.record.RecordEditor;

/** Clampings: the list, one with its figures and layer map, its form, and a copy to start the next from. */
public final class ClampingPages {
    private final Site site;
    private final ClampingForm forms;
    private final RecordEditor<Clamping> editor;

    public ClampingPages(Site site) {
        this.site = site;
        this.forms = new Forms(site::currency).clampings();
        this.editor = new RecordEditor<>(
                site,
                forms,
                new RecordEditor.About("clamping-form", "clampings", "/clampings"),
                clamping -> "/clampings/" + clamping.id(),
                () -> choices(site));
    }

    private static Map<String, Object> choices(Site site) {
        return Map.of(
                "boards", Choices.boards(site),
                "cloths", Choices.cloths(site),
                "lots", Choices.lots(site),
                "fibres", Choices.fibres(),
                "steps", Choices.words(StepKind.values()),
                "axes", Choices.words(Fold.Axis.values()),
                "styles", Choices.words(Fold.Style.values()),
                "roles", Choices.words(Role.values()));
    }

    public void routes(RoutesConfig routes) {
        routes.get("/clampings", this::list);
        routes.get("/clampings/new", ctx -> editor.showNew(ctx, () -> start(ctx)));
        routes.post("/clampings", this::saveNew);
        routes.post("/clampings/figures", this::figures);
        routes.get("/clampings/{id}", this::show);
        routes.get("/clampings/{id}/edit", ctx -> editor.showEdit(ctx, ctx.pathParam("id")));
        routes.post("/clampings/{id}/edit", ctx -> editor.save(ctx, ctx.pathParam("id")));
        routes.post("/clampings/{id}/withdraw", ctx -> editor.withdraw(ctx, ctx.pathParam("id")));
    }

    /** The next free name for a clamping of this year. */
    public static ClampingId next(Site site) {
        return new ClampingId(Kinds.CLAMPING_NUMBERS
                .next(start -> site.ledger().idsEverUsed(Kinds.CLAMPING, start), site.year())
                .value());
    }

    /** The recipe of another clamping under a new name, without its dates, times and lessons. */
    public static Clamping copy(Clamping other, ClampingId id) {
        List<Step> steps = other.steps().stream()
                .map(step -> new Step(
                        step.kind(),
                        null,
                        step.charges(),
                        step.liquor(),
                        step.liquorRatio(),
                        step.temperature(),
                        step.ph(),
                        step.duration(),
                        step.vat(),
                        step.holes(),
                        new tenterbook.recipe.DipSeries(
                                step.dips().count(),
                                step.dips().each(),
                                step.dips().airing(),
                                List.of()),
                        step.notes()))
                .toList();
        return new Clamping(
                id,
                other.title(),
                null,
                other.boards(),
                other.fold(),
                other.cuts(),
                steps,
                other.clamped(),
                other.pressure(),
                other.water(),
                "",
                "",
                other.id(),
                null,
                null,
                null);
    }

    private Form start(Context ctx) {
        String from = ctx.queryParam("from");
        ClampingId id = next(site);
        String piece = Optional.ofNullable(ctx.queryParam("for")).orElse("");
        if (from == null) {
            Form form = Form.empty().put("id", id).put("forPiece", piece);
            // A first row of each stands ready, so that opening its card is enough; left empty, it is not saved.
            List.of("boards", "cuts", "fold.folds")
                    .forEach(part -> form.row(part, 0).put("there", 1));
            return here(form);
        }
        Clamping other = site.saved(Kinds.CLAMPING, from).record();
        return here(forms.filled(copy(other, id)).put("forPiece", piece));
    }

    /** Made where the studio is today, unless that is changed. */
    private Form here(Form form) {
        Studio studio = site.archive().studio();
        return form.put("dyer", studio.maker()).put("place", studio.place()).put("country", studio.dyedIn());
    }

    /** Saves a new clamping and, where it is entered for a piece, adds it to that piece in the same transaction. */
    private void saveNew(Context ctx) {
        Form form = Form.of(ctx.formParamMap());
        if (!form.has("id")) {
            form.put("id", next(site));
        }
        String number = form.text("forPiece");
        editor.save(ctx, "", form, act -> {}, (act, clamping) -> {
            if (!number.isEmpty()) {
                Saved<Piece> saved = site.saved(Kinds.PIECE, number);
                act.save(
                        Kinds.PIECE,
                        saved.record().madeAlsoIn(clamping.id()),
                        saved.version(),
                        w("clamping-form.recorded-with-its-clamping"));
            }
        });
    }

    private void list(Context ctx) {
        String before = ctx.queryParam("all");
        int most = before == null ? 60 : 10_000;
        List<Clamping> clampings = site.ledger().latest(Kinds.CLAMPING, most).stream()
                .map(Saved::record)
                .toList();
        Html.show(
                ctx,
                "clampings",
                Map.of(
                        "page", site.page(ctx, w("clampings.title"), "clampings"),
                        "clampings", clampings,
                        "total", site.ledger().count(Kinds.CLAMPING)));
    }

    private void show(Context ctx) {
        String id = ctx.pathParam("id");
        Saved<Clamping> saved = site.saved(Kinds.CLAMPING, id);
        Html.show(
                ctx,
                "clamping",
                Map.of(
                        "page", site.page(ctx, w("titles.clamping", "id", id), "clampings"),
                        "view", ClampingView.of(site.archive(), saved.record(), saved.version())));
    }

    /** The figures of what is typed so far, for the panel beside the form, and the line of each card. */
    private void figures(Context ctx) {
        Form form = Form.of(ctx.formParamMap());
        if (!form.has("id")) {
            form.put("id", "new");
        }
        String from = form.text("copiedFrom");
        form.put("copiedFrom", "");
        Clamping clamping = forms.read(form, null);
        ClampingView view = clamping == null ? null : ClampingView.of(site.archive(), clamping, 0);
        Map<String, Object> values = new HashMap<>();
        values.put("problems", form.problemsById().values().stream().distinct().toList());
        values.put("view", view);
        values.put("scaled", view == null ? List.of() : scaled(form, view, from));
        values.put(
                "lines",
                new ClampingCards(
                                Choices.boards(site),
                                Choices.cloths(site),
                                Choices.lots(site),
                                Choices.words(Fold.Style.values()),
                                Choices.words(Fold.Axis.values()))
                        .lines(form));
        Html.show(ctx, "part/figures", values);
    }

    /**
     * An amount of the copied recipe that is another for the cloth of the form.
     *
     * @param field name of the field for the amount
     * @param amount for this cloth, as the field takes it
     */
    public record ScaledAmount(String lot, String copied, String amount, String field) {}

    private List<ScaledAmount> scaled(Form form, ClampingView view, String from) {
        Clamping copied = from.isEmpty() ? null : site.archive().clamping(from).orElse(null);
        if (copied == null) {
            return List.of();
        }
        List<Form> steps = typed(form, "steps");
        return ScaledCharge.of(
                        view.clamping(),
                        view.figures().clothMass(),
                        copied,
                        ClampingView.of(site.archive(), copied, 0).figures().clothMass())
                .stream()
                .map(each -> new ScaledAmount(
                        each.lot() == null ? w("clampings.no-lot") : view.lotTitle(each.lot()),
                        w(QuantityWords.withAssumedUnit(each.copied())),
                        QuantityWords.value(each.scaled()),
                        typed(steps.get(each.step()), "charges")
                                .get(each.charge())
                                .name("weighed")))
                .toList();
    }

    /** The rows that a clamping is read from: a row in which nothing is typed is not part of it. */
    private static List<Form> typed(Form form, String part) {
        return form.rows(part).stream().filter(row -> !row.blank()).toList();
    }
}
