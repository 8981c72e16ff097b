package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.archive.Editions;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.ledger.Saved;
import tenterbook.material.Evidence;
import tenterbook.measure.Digest;
import tenterbook.measure.PartialDate;
import tenterbook.piece.CareTest;
import tenterbook.piece.Category;
import tenterbook.piece.EventKind;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.Specimen;
import tenterbook.piece.Status;
import tenterbook.piece.TestStandard;
import tenterbook.piece.label.ComponentKind;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.web.Site;
import tenterbook.web.clamping.ClampingPages;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.form.Forms;
import tenterbook.web.form.RecordForm;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.record.Choices;
import tenterbook.web.record.RecordEditor;
import tenterbook.web.record.UploadedPhotos;

/** One piece: recording it, showing it, changing it. */
public final class PiecePages {
    private final Site site;
    private final PhotoRegistration registration;
    private final RecordForm<Piece> forms;
    private final RecordEditor<Piece> editor;
    private final RecordEditor<Piece> quick;

    public PiecePages(Site site, PhotoRegistration registration) {
        this.site = site;
        this.registration = registration;
        this.forms = new Forms(site::currency).pieces();
        this.editor = new RecordEditor<>(
                site,
                forms,
                new RecordEditor.About("piece-form", "pieces", "/pieces"),
                piece -> "/pieces/" + piece.number(),
                this::choices);
        this.quick = new RecordEditor<>(
                site,
                forms,
                new RecordEditor.About("piece-new", "record", "/pieces"),
                piece -> "/pieces/" + piece.number(),
                this::choices);
    }

    public void routes(RoutesConfig routes) {
        routes.get("/pieces/new", ctx -> quick.showNew(ctx, this::start, form -> begin(ctx, form)));
        routes.post("/pieces", this::record);
        routes.get("/pieces/{number}", this::show);
        routes.get("/pieces/{number}/photographs", this::photographs);
        routes.get("/pieces/{number}/edit", ctx -> editor.showEdit(ctx, ctx.pathParam("number")));
        routes.post("/pieces/{number}/edit", ctx -> {
            Form form = Form.of(FormEncoding.fields(ctx));
            PhotographsMeanwhile.join(
                    site,
                    ctx.pathParam("number"),
                    form,
                    added -> addRow(form, added.photo(), added.role(), added.state()));
            takeFiles(ctx, form);
            editor.save(ctx, ctx.pathParam("number"), form);
        });
        routes.post("/pieces/{number}/withdraw", ctx -> editor.withdraw(ctx, ctx.pathParam("number")));
        routes.post("/pieces/{number}/dye-again", this::dyeAgain);
    }

    private Map<String, Object> choices() {
        return Map.ofEntries(
                Map.entry("categories", Choices.words(Category.values())),
                Map.entry("statuses", Choices.words(Status.values())),
                Map.entry("roles", Choices.words(PhotoRole.values())),
                Map.entry("testKinds", Choices.words(CareTest.Kind.values())),
                Map.entry("testStandards", Choices.words(TestStandard.values())),
                Map.entry("specimens", Choices.words(Specimen.values())),
                Map.entry("taxWays", Choices.taxWays()),
                Map.entry("eventKinds", Choices.words(EventKind.values())),
                Map.entry("parties", Choices.parties(site)),
                Map.entry("clampings", Choices.clampings(site)),
                Map.entry("componentKinds", Choices.words(ComponentKind.values())),
                Map.entry(
                        "editions",
                        new Editions(site.archive())
                                .names().keySet().stream()
                                        .map(name -> new Choices.Choice(name, ""))
                                        .toList()),
                Map.entry("evidence", Choices.words(Evidence.values())));
    }

    private PieceNumber nextNumber() {
        return site.archive()
                .studio()
                .numbers()
                .next(start -> site.ledger().idsEverUsed(Kinds.PIECE, start), site.year());
    }

    private Form start() {
        return propose(Form.empty());
    }

    private Form propose(Form form) {
        PieceNumber next = nextNumber();
        return form.put("number", next).put("proposed", next);
    }

    /** Whether nothing was entered and the number is the one that was proposed: such a piece would only use up its number. */
    private static boolean empty(Form form) {
        return form.text("number").equals(form.text("proposed"))
                && form.typed("number").stream()
                        .filter(entry ->
                                !Set.of("proposed", "photosShown", "aside").contains(entry.getKey()))
                        .allMatch(entry -> entry.getValue().isBlank());
    }

    /** Adds the photograph and the clamping that the address names, also to a draft. */
    private void begin(Context ctx, Form form) {
        if (form.text("number").equals(form.text("proposed"))) {
            propose(form);
        }
        String clamping = ctx.queryParam("clamping");
        if (clamping != null) {
            form.put("dyeing", "earlier").put("earlier", clamping);
        }
        String named = ctx.queryParam("photo");
        if (named != null && named.matches("[0-9a-f]{64}")) {
            registration.find(new Digest(named)).ifPresent(photo -> addRow(form, photo.digest(), PhotoRole.FRONT));
        }
    }

    /** Saves a new piece with its uploaded files and, where asked, with the last clamping or a copy of it. */
    private void record(Context ctx) {
        Form form = Form.of(FormEncoding.fields(ctx));
        takeFiles(ctx, form);
        if (quick.clockDoubted(ctx, "", form)) {
            return;
        }
        if (!form.has("number")) {
            propose(form);
        }
        if (empty(form)) {
            form.problem("title", w("piece-form.empty"));
        }
        String from = form.text("dyeing");
        if (from.startsWith("same ")) {
            form.row("made", 0).put("clamping", from.substring(5));
        }
        if (from.equals("earlier")) {
            earlier(form);
        }
        if (!from.startsWith("copy ")) {
            quick.save(ctx, "", form);
            return;
        }
        Clamping other = site.saved(Kinds.CLAMPING, from.substring(5)).record();
        ClampingId id = ClampingPages.next(site);
        form.row("made", 0).put("clamping", id);
        Clamping copy = ClampingPages.copy(other, id);
        if (quick.save(ctx, "", form, act -> act.create(Kinds.CLAMPING, copy), (act, piece) -> {})) {
            FlashMessage.andGo(
                    ctx,
                    w("piece-form.recorded", "number", form.text("number"), "recipe", id, "other", other.id()),
                    "/clampings/" + id + "/edit");
        }
    }

    /** Any clamping, by its number in any case of letters. */
    private void earlier(Form form) {
        String typed = form.text("earlier").split("\\s", 2)[0];
        if (typed.isEmpty()) {
            form.problem("earlier", w("piece-form.which-clamping-empty"));
            return;
        }
        site.archive()
                .clamping(typed)
                .or(() -> site.archive().clamping(typed.toUpperCase(java.util.Locale.ROOT)))
                .ifPresentOrElse(
                        clamping -> form.row("made", 0).put("clamping", clamping.id()),
                        () -> form.problem("earlier", w("piece-form.no-such-clamping", "found", typed)));
    }

    /** Adds a row for each uploaded file. */
    private void takeFiles(Context ctx, Form form) {
        UploadedPhotos.take(ctx, form, registration, digest -> addRow(form, digest, PhotoRole.FRONT));
    }

    private static void addRow(Form form, Digest digest, PhotoRole role) {
        addRow(form, digest, role, 1);
    }

    private static void addRow(Form form, Digest digest, PhotoRole role, int state) {
        boolean there =
                form.rows("photos").stream().anyMatch(row -> row.text("photo").equals(digest.hex()));
        if (!there) {
            form.rearrange("add photos");
            List<Form> rows = form.rows("photos");
            rows.get(rows.size() - 1)
                    .put("photo", digest)
                    .put("role", rows.size() == 1 ? role : PhotoRole.DETAIL)
                    .put("state", state);
        }
    }

    private void show(Context ctx) {
        String number = ctx.pathParam("number");
        Saved<Piece> saved = site.saved(Kinds.PIECE, number);
        PieceFacts facts = PieceReader.of(site.archive(), saved.record());
        String title = (facts.piece().shown() + " " + facts.piece().title()).strip();
        Html.show(
                ctx,
                "piece",
                Map.of(
                        "page", site.page(ctx, title, "pieces"),
                        "view", PieceView.of(site, saved, facts),
                        "parties", partyNames(facts)));
    }

    /** The photographs of a piece whose page is open, where they are others than that page shows; else nothing. */
    private void photographs(Context ctx) {
        Saved<Piece> saved = site.saved(Kinds.PIECE, ctx.pathParam("number"));
        if (String.valueOf(saved.version()).equals(ctx.queryParam("version"))) {
            ctx.status(204);
            return;
        }
        PieceFacts facts = PieceReader.of(site.archive(), saved.record());
        Html.show(ctx, "part/gallery", Map.of("view", PieceView.of(site, saved, facts)));
    }

    private static Map<String, String> partyNames(PieceFacts facts) {
        Map<String, String> names = new java.util.HashMap<>();
        facts.parties().forEach((id, party) -> names.put(id.value(), party.title()));
        return names;
    }

    /** Dyes the piece again in a new clamping: it keeps its number and gets one more state. */
    private void dyeAgain(Context ctx) {
        String number = ctx.pathParam("number");
        Saved<Piece> saved = site.saved(Kinds.PIECE, number);
        Form form = forms.filled(saved.record());
        ClampingId id = ClampingPages.next(site);
        site.write(act -> {
            List<Clamping> before = site.archive().clampingsOf(saved.record());
            Clamping fresh = before.isEmpty()
                    ? new Clamping(
                            id,
                            "",
                            PartialDate.of(site.certainToday()),
                            null,
                            null,
                            null,
                            null,
                            null,
                            "",
                            "",
                            "",
                            "",
                            null,
                            null,
                            null,
                            null)
                    : ClampingPages.copy(before.get(before.size() - 1), id);
            act.create(Kinds.CLAMPING, fresh);
            form.row("made", saved.record().made().size()).put("clamping", id);
            return act.save(
                    Kinds.PIECE, forms.read(form, saved.record()), saved.version(), w("piece-form.dyed-again-note"));
        });
        FlashMessage.andGo(
                ctx,
                w(
                        "piece-form.new-state",
                        "number",
                        number,
                        "state",
                        saved.record().made().size() + 1),
                "/clampings/" + id + "/edit");
    }
}
