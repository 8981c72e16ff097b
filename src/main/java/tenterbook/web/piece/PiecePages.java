package tenterbook.web.piece;

import static tenterbook.web.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.archive.Papers;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.facts.Cloths;
import tenterbook.facts.Colours;
import tenterbook.facts.Denial;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.facts.Whereabouts;
import tenterbook.imaging.Photo;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.measure.PartialDate;
import tenterbook.piece.CareTest;
import tenterbook.piece.Category;
import tenterbook.piece.EventKind;
import tenterbook.piece.Party;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Specimen;
import tenterbook.piece.Status;
import tenterbook.piece.TestStandard;
import tenterbook.piece.condition.Examination;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.dip.DipTally;
import tenterbook.web.FlashMessage;
import tenterbook.web.FormEncoding;
import tenterbook.web.Html;
import tenterbook.web.NotFound;
import tenterbook.web.Site;
import tenterbook.web.Words;
import tenterbook.web.clamping.ClampingPages;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.condition.LastExamined;
import tenterbook.web.form.Form;
import tenterbook.web.form.Forms;
import tenterbook.web.form.RecordForm;
import tenterbook.web.print.IssuedPaperView;
import tenterbook.web.record.Choices;
import tenterbook.web.record.FactLine;
import tenterbook.web.record.RecordEditor;
import tenterbook.words.Joined;

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
        routes.get("/pieces/{number}/edit", ctx -> editor.showEdit(ctx, ctx.pathParam("number")));
        routes.post("/pieces/{number}/edit", ctx -> {
            Form form = Form.of(FormEncoding.fields(ctx));
            takeFiles(ctx, form);
            editor.save(ctx, ctx.pathParam("number"), form);
        });
        routes.post("/pieces/{number}/withdraw", ctx -> editor.withdraw(ctx, ctx.pathParam("number")));
        routes.post("/pieces/{number}/dye-again", this::dyeAgain);
    }

    private Map<String, Object> choices() {
        return Map.of(
                "categories", Choices.words(Category.values()),
                "statuses", Choices.words(Status.values()),
                "roles", Choices.words(PhotoRole.values()),
                "testKinds", Choices.words(CareTest.Kind.values()),
                "testStandards", Choices.words(TestStandard.values()),
                "specimens", Choices.words(Specimen.values()),
                "eventKinds", Choices.words(EventKind.values()),
                "parties", Choices.parties(site),
                "clampings", Choices.clampings(site));
    }

    private PieceNumber nextNumber() {
        return site.archive()
                .studio()
                .numbers()
                .next(
                        site.archive().ledger().allIdsEverUsed(Kinds.PIECE).stream(),
                        site.today().getYear());
    }

    private Form start() {
        return Form.empty().put("number", nextNumber());
    }

    /** Adds the photograph that the address names, also to a draft. */
    private void begin(Context ctx, Form form) {
        String named = ctx.queryParam("photo");
        if (named != null && named.matches("[0-9a-f]{64}")) {
            registration.find(new Digest(named)).ifPresent(photo -> addRow(form, photo.digest(), PhotoRole.FRONT));
        }
    }

    /** Saves a new piece, taking in files sent without scripts and, where asked, starting from the last clamping. */
    private void record(Context ctx) {
        Form form = Form.of(FormEncoding.fields(ctx));
        takeFiles(ctx, form);
        String from = form.text("dyeing");
        if (from.startsWith("same ")) {
            form.row("made", 0).put("clamping", from.substring(5));
        }
        if (!from.startsWith("copy ")) {
            quick.save(ctx, "", form);
            return;
        }
        Clamping other = site.archive()
                .clamping(from.substring(5))
                .orElseThrow(() -> NotFound.of(Kinds.CLAMPING, from.substring(5)));
        ClampingId id = ClampingPages.next(site);
        form.row("made", 0).put("clamping", id);
        Clamping copy = ClampingPages.copy(other, id);
        if (quick.save(ctx, "", form, act -> act.create(Kinds.CLAMPING, copy))) {
            FlashMessage.andGo(
                    ctx,
                    w("piece-form.recorded", "number", form.text("number"), "recipe", id, "other", other.id()),
                    "/clampings/" + id + "/edit");
        }
    }

    /** Adds a row for each uploaded file; one that is refused becomes a problem beside the field. */
    private void takeFiles(Context ctx, Form form) {
        for (UploadedFile file : RecordEditor.files(ctx, "files")) {
            try (InputStream bytes = file.content()) {
                Photo photo = registration.take(bytes, file.filename());
                addRow(form, photo.digest(), PhotoRole.FRONT);
            } catch (PhotoRefused | IOException e) {
                form.problem(
                        "files", w("photographs.file-problem", "file", file.filename(), "problem", Words.sentence(e)));
            }
        }
    }

    private static void addRow(Form form, Digest digest, PhotoRole role) {
        boolean there =
                form.rows("photos").stream().anyMatch(row -> row.text("photo").equals(digest.hex()));
        if (!there) {
            form.rearrange("add photos");
            List<Form> rows = form.rows("photos");
            rows.get(rows.size() - 1)
                    .put("photo", digest)
                    .put("role", rows.size() == 1 ? role : PhotoRole.DETAIL)
                    .put("state", 1);
        }
    }

    /**
     * A piece as its page shows it.
     *
     * @param clothDoubt why its photograph gives no colours; null where it gives some or a person named them
     * @param notDyed what stands in place of the dyeings where there is none
     * @param dyeings the clampings it went through, in order
     * @param papers that were printed for it, newest first
     * @param unreadable names of papers that are kept and cannot be read
     * @param gps whether a photograph holds coordinates, which never leave the archive by themselves
     */
    public record PieceView(
            Piece piece,
            int version,
            ColourBand band,
            Colours.@Nullable Doubt clothDoubt,
            List<Shot> photos,
            List<Dyeing> dyeings,
            List<FactLine> facts,
            List<Examination> examined,
            String notDyed,
            boolean gps,
            Saved<Piece> saved,
            List<IssuedPaperView> papers,
            List<String> unreadable) {
        public Optional<Shot> first() {
            return photos.stream().findFirst();
        }
    }

    /** A photograph with what is known of the file. */
    public record Shot(PiecePhoto of, Photo photo) {
        public String alt(String title) {
            return of.caption().isEmpty() ? w("plates.alt", "photograph", of.shows(), "piece", title) : of.caption();
        }
    }

    /** One passage through a clamping. */
    public record Dyeing(int state, String layers, String note, ClampingPages.ClampingView clamping) {}

    private void show(Context ctx) {
        String number = ctx.pathParam("number");
        Saved<Piece> saved =
                site.archive().ledger().find(Kinds.PIECE, number).orElseThrow(() -> NotFound.of(Kinds.PIECE, number));
        PieceFacts facts = PieceReader.of(site.archive(), saved.record());
        Piece piece = facts.piece();
        List<Shot> photos = new ArrayList<>();
        for (PiecePhoto photo : piece.photos()) {
            Photo found = facts.photos().get(photo.photo());
            if (found != null) {
                photos.add(new Shot(photo, found));
            }
        }
        List<Dyeing> dyeings = new ArrayList<>();
        for (int i = 0; i < piece.made().size(); i++) {
            var made = piece.made().get(i);
            int state = i + 1;
            facts.clampings().stream()
                    .filter(clamping -> clamping.id().equals(made.clamping()))
                    .findFirst()
                    .ifPresent(clamping -> dyeings.add(new Dyeing(
                            state,
                            made.layers().toString(),
                            made.note(),
                            ClampingPages.view(site.archive(), clamping, 0))));
        }
        PieceView view = new PieceView(
                piece,
                saved.version(),
                ColourBand.of(facts.colours()),
                facts.colours().from() == Colours.From.NAMED
                        ? null
                        : facts.colours().doubt(),
                photos,
                dyeings,
                facts(facts),
                facts.condition().unnoted(piece),
                Denial.NOT_TOLD_YET.unless(facts, () -> w("piece-form.no-record-of-clamping")),
                photos.stream().anyMatch(shot -> shot.photo().gps()),
                saved,
                IssuedPaperView.of(site, piece),
                Papers.of(site.archive().ledger(), number).unreadable());
        String title = piece.title().isEmpty() ? number : number + " " + piece.title();
        Html.show(
                ctx,
                "piece",
                Map.of("page", site.page(ctx, title, "pieces"), "view", view, "parties", partyNames(facts)));
    }

    private static Map<String, String> partyNames(PieceFacts facts) {
        Map<String, String> names = new java.util.HashMap<>();
        facts.parties().forEach((id, party) -> names.put(id.value(), party.title()));
        return names;
    }

    private List<FactLine> facts(PieceFacts of) {
        Piece piece = of.piece();
        List<FactLine> facts = new ArrayList<>();
        facts.add(new FactLine(w("piece-form.kind"), FactLine.or(piece.category())));
        facts.add(FactLine.of(w("piece-form.length"), piece.length()));
        facts.add(FactLine.of(w("piece-form.width"), piece.width()));
        facts.add(FactLine.of(w("piece-form.weight"), piece.mass()));
        facts.add(new FactLine(w("piece-form.finished"), w(piece.finished())));
        facts.add(new FactLine(w("piece-form.edition"), FactLine.or(piece.edition())));
        Whereabouts now = of.whereabouts();
        facts.add(new FactLine(
                w("piece-form.status"),
                FactLine.or(now.statusInWords()),
                now.disagreement().or(now::statusFrom).map(Words::w).orElse("")));
        facts.add(new FactLine(
                w("piece-form.held-by"),
                FactLine.or(of.holder().map(Party::title).orElse("")),
                now.holderDisagreement().map(Words::w).orElse("")));
        facts.add(new FactLine(w("piece-form.place"), FactLine.or(piece.place())));
        facts.add(
                new FactLine(w("piece-form.price"), piece.price() == null ? FactLine.notRecorded() : w(piece.price())));
        facts.add(new FactLine(w("piece-form.on-it-besides-cloth"), FactLine.or(piece.trims())));
        Cloths cloth = of.cloth();
        facts.add(new FactLine(
                w("piece-form.cloth"),
                FactLine.or(cloth.inWords()),
                cloth.disagreement().map(Words::w).orElseGet(cloth::evidence)));
        DipTally dips = of.dips();
        facts.add(new FactLine(
                w("piece-form.dips"), FactLine.or(dips.text()), Words.w(new Joined(" ", dips.disagreements()))));
        facts.add(LastExamined.fact(of.condition(), site.today()));
        return facts;
    }

    /** The same piece into a new clamping: keeps its number, gains a state. */
    private void dyeAgain(Context ctx) {
        String number = ctx.pathParam("number");
        Saved<Piece> saved =
                site.archive().ledger().find(Kinds.PIECE, number).orElseThrow(() -> NotFound.of(Kinds.PIECE, number));
        Form form = forms.filled(saved.record());
        ClampingId id = ClampingPages.next(site);
        site.archive().ledger().write(site.author(), act -> {
            List<Clamping> before = site.archive().clampingsOf(saved.record());
            Clamping fresh = before.isEmpty()
                    ? new Clamping(
                            id, "", PartialDate.of(site.today()), null, null, null, null, null, "", "", "", "", null)
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
