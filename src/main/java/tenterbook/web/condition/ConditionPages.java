package tenterbook.web.condition;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.facts.Condition;
import tenterbook.facts.PieceReader;
import tenterbook.imaging.Photo;
import tenterbook.imaging.file.PhotoRefused;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Revision;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Comparison;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.ExaminationId;
import tenterbook.web.Site;
import tenterbook.web.form.ExaminationForm;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.form.Forms;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.web.record.DraftPlace;
import tenterbook.web.record.FactLine;
import tenterbook.web.record.RecordEditor;
import tenterbook.words.Message;

/** The condition of a piece: its examinations, one of them with its photographs and marks, and examining it again. */
public final class ConditionPages {
    private static final NumberScheme NUMBERS = new NumberScheme("E");
    private final Site site;
    private final PhotoRegistration registration;
    private final ExaminationForm forms;

    public ConditionPages(Site site, PhotoRegistration registration) {
        this.site = site;
        this.forms = new Forms(site::currency).examinations();
        this.registration = registration;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/pieces/{number}/condition", this::list);
        routes.get("/pieces/{number}/condition/new", this::showNew);
        routes.post("/pieces/{number}/condition", this::saveNew);
        routes.get("/examinations/{id}", this::show);
        routes.get("/examinations/{id}/edit", this::showEdit);
        routes.post("/examinations/{id}/edit", this::saveEdit);
        routes.post("/examinations/{id}/withdraw", ctx -> {
            Saved<Examination> saved = saved(ctx);
            editor(piece(saved.record().piece().value()), false).withdraw(ctx, ctx.pathParam("id"));
        });
    }

    /**
     * The next free name for an examination of this year.
     *
     * @param allIdsEverUsed all names ever given
     */
    public static ExaminationId next(List<String> allIdsEverUsed, LocalDate today) {
        return new ExaminationId(
                NUMBERS.next(allIdsEverUsed.stream(), today.getYear()).value());
    }

    private Piece piece(String number) {
        return site.saved(Kinds.PIECE, number).record();
    }

    private Saved<Examination> saved(Context ctx) {
        String id = ctx.pathParam("id");
        return site.saved(Kinds.EXAMINATION, id);
    }

    /** The piece of an examination, also of one that was withdrawn while somebody was typing. */
    private Piece pieceOf(Context ctx) {
        String id = ctx.pathParam("id");
        Optional<Revision> newest = site.archive().ledger().history(Kinds.EXAMINATION.key(id)).stream()
                .reduce((first, second) -> second);
        return piece(newest.map(revision -> Kinds.EXAMINATION
                        .codec()
                        .fromText(revision.json())
                        .piece()
                        .value())
                .orElseThrow(() -> NotFound.of(Kinds.EXAMINATION, id)));
    }

    /** The form of one piece: its choices and its draft are the piece's own. */
    private RecordEditor<Examination> editor(Piece piece, boolean fresh) {
        String number = piece.number().value();
        return new RecordEditor<>(
                site,
                forms,
                new RecordEditor.About(
                        "examination-form",
                        "pieces",
                        fresh ? "/pieces/" + number + "/condition" : "/examinations",
                        DraftPlace.OF + number),
                examination -> "/examinations/" + examination.id(),
                () -> Map.of("desk", new ExaminationChoices(site, registration, piece)));
    }

    // ---- recording

    private void showNew(Context ctx) {
        Piece piece = piece(ctx.pathParam("number"));
        editor(piece, true).showNew(ctx, () -> {
            Form form = start(piece, ctx.queryParam("from"));
            String when = ctx.queryParam("when");
            return when == null ? form : form.put("when", when);
        });
    }

    /** Begins with what the last examination saw, or the one named; nothing of it is taken for checked. */
    private Form start(Piece piece, String from) {
        List<Examination> all = site.archive().examinationsOf(piece.number());
        Examination last = from == null
                ? (all.isEmpty() ? null : all.get(all.size() - 1))
                : all.stream()
                        .filter(each -> each.id().value().equals(from))
                        .findFirst()
                        .orElseThrow(() -> new NotFound(
                                Message.of("not-here.examination-of-piece", "id", from, "piece", piece.number())));
        return NewExaminationForm.of(
                piece, last, site.today(), site.archive().studio().maker());
    }

    private void saveNew(Context ctx) {
        Piece piece = piece(ctx.pathParam("number"));
        Form form = typed(ctx, piece);
        form.put("piece", piece.number())
                .put("id", next(site.archive().ledger().allIdsEverUsed(Kinds.EXAMINATION), site.today()));
        editor(piece, true).save(ctx, "", form);
    }

    private void showEdit(Context ctx) {
        Piece piece = pieceOf(ctx);
        editor(piece, false).showEdit(ctx, ctx.pathParam("id"));
    }

    private void saveEdit(Context ctx) {
        Piece piece = pieceOf(ctx);
        editor(piece, false).save(ctx, ctx.pathParam("id"), typed(ctx, piece));
    }

    /** What was sent, with the files that came with it and the piece's own photographs that were ticked, as rows. */
    private Form typed(Context ctx, Piece piece) {
        Form form = Form.of(FormEncoding.fields(ctx));
        for (UploadedFile file : FormEncoding.files(ctx, "files")) {
            try (InputStream bytes = file.content()) {
                Photo photo = registration.take(bytes, file.filename());
                NewExaminationForm.addPhoto(form, photo.digest(), "", "");
            } catch (PhotoRefused | IOException e) {
                form.problem("files", w("photo.file-problem", "file", file.filename(), "problem", Words.sentence(e)));
            }
        }
        piece.photos().forEach(photo -> {
            String tick = "take." + photo.photo().hex();
            if (form.checked(tick)) {
                form.put(tick, "");
                NewExaminationForm.addPhoto(
                        form, photo.photo(), NewExaminationForm.view(photo.role()), photo.caption());
            }
        });
        return form;
    }

    // ---- showing

    /**
     * An examination in the list of a piece.
     *
     * @param by who examined
     * @param changes since the one it was made against, in words; empty where there was none
     */
    public record Line(Examination examination, String by, String changes) {}

    private void list(Context ctx) {
        Piece piece = piece(ctx.pathParam("number"));
        Condition condition = PieceReader.of(site.archive(), piece).condition();
        List<Examination> all = condition.examinations();
        List<Line> lines = new ArrayList<>();
        for (Examination each : all) {
            lines.add(
                    0,
                    new Line(
                            each,
                            person(each.examiner(), each.party()),
                            comparison(each, all)
                                    .map(made -> Words.w(made.inWords()))
                                    .orElse("")));
        }
        Html.show(
                ctx,
                "condition",
                Map.of(
                        "page", site.page(ctx, w("titles.condition", "piece", piece.number()), "pieces"),
                        "piece", piece,
                        "lines", lines,
                        "condition", condition,
                        "doubts", doubts(all)));
    }

    /** What is to be asked of the days of examinations; the record stands all the same. */
    private List<String> doubts(List<Examination> examinations) {
        return examinations.stream()
                .filter(each -> !LastExamined.doubt(each.when(), site.today()).isEmpty())
                .map(each -> w(
                        "examination-form.dated",
                        "id",
                        each.id(),
                        "when",
                        each.when(),
                        "doubt",
                        LastExamined.doubt(each.when(), site.today())))
                .toList();
    }

    private static Optional<Comparison> comparison(Examination examination, List<Examination> all) {
        return Optional.ofNullable(examination.earlier())
                .flatMap(id ->
                        all.stream().filter(other -> other.id().equals(id)).findFirst())
                .map(before -> Comparison.of(before, examination));
    }

    /** As in 'Tomé Quarral, Museu do Sarelho'. */
    private String person(String name, PartyId party) {
        String title = party == null
                ? ""
                : site.archive().party(party.value()).map(of -> of.title()).orElse(party.value());
        return name.isEmpty() ? title : title.isEmpty() || title.equals(name) ? name : name + ", " + title;
    }

    /**
     * An examination as its page shows it.
     *
     * @param comparison with the examination chosen, else with the one it was made against; null where there is none
     * @param others of the piece that it can be compared with
     */
    public record ConditionView(
            Piece piece,
            Saved<Examination> saved,
            List<MarkedPhotograph> plates,
            List<FactLine> facts,
            List<FactLine> advice,
            List<FactLine> hands,
            Comparison comparison,
            List<Examination> others) {
        public Examination examination() {
            return saved.record();
        }

        /** Where an observation is marked, as in 'front, 42 % across, 31 % down'. */
        public String marked(tenterbook.piece.condition.Observation observation) {
            return observation.marks().stream()
                    .map(mark -> plates.stream()
                                    .filter(plate ->
                                            plate.digest().equals(mark.photo().hex()))
                                    .findFirst()
                                    .map(MarkedPhotograph::label)
                                    .orElse("a photograph")
                            + ", " + Words.w(mark.inWords()))
                    .collect(java.util.stream.Collectors.joining("; "));
        }
    }

    private void show(Context ctx) {
        Saved<Examination> saved = saved(ctx);
        Examination examination = saved.record();
        Piece piece = piece(examination.piece().value());
        List<Examination> all = site.archive().examinationsOf(piece.number());
        String against = Optional.ofNullable(ctx.queryParam("against")).orElse("");
        Optional<Comparison> comparison = against.isEmpty()
                ? comparison(examination, all)
                : Optional.of(Comparison.of(
                        all.stream()
                                .filter(other -> other.id().value().equals(against))
                                .findFirst()
                                .orElseThrow(() -> new NotFound(Message.of(
                                        "not-here.examination-of-piece", "id", against, "piece", piece.number()))),
                        examination));
        Map<String, Object> values = new HashMap<>();
        values.put(
                "page",
                site.page(ctx, w("titles.examination", "id", examination.id(), "piece", piece.number()), "pieces"));
        values.put(
                "view",
                new ConditionView(
                        piece,
                        saved,
                        MarkedPhotograph.of(examination, registration::find),
                        facts(examination),
                        advice(examination),
                        Stream.of(
                                        hand(w("examination-form.handed-over-by"), examination.handedOver()),
                                        hand(w("examination-form.received-by"), examination.received()))
                                .flatMap(Optional::stream)
                                .toList(),
                        comparison.orElse(null),
                        all.stream()
                                .filter(other -> !other.id().equals(examination.id()))
                                .toList()));
        values.put("doubts", doubts(List.of(examination)));
        Html.show(ctx, "examination", values);
    }

    private List<FactLine> facts(Examination examination) {
        return List.of(
                new FactLine(w("examination-form.when"), w(examination.when())),
                new FactLine(w("examination-form.why"), FactLine.or(examination.reason())),
                new FactLine(w("examination-form.where"), FactLine.or(examination.place())),
                new FactLine(
                        w("examination-form.examined-by"),
                        FactLine.or(person(examination.examiner(), examination.party()))),
                new FactLine(w("examination-form.how"), FactLine.or(examination.means())),
                FactLine.of(w("examination-form.length-then"), examination.length()),
                FactLine.of(w("examination-form.width-then"), examination.width()));
    }

    private static List<FactLine> advice(Examination examination) {
        return List.of(
                new FactLine(w("examination-form.handling"), FactLine.or(examination.handling())),
                new FactLine(w("examination-form.light-and-showing"), FactLine.or(examination.light())),
                new FactLine(w("examination-form.packing"), FactLine.or(examination.packing())));
    }

    private Optional<FactLine> hand(String label, tenterbook.piece.condition.Signatory signatory) {
        if (!signatory.named()) {
            return Optional.empty();
        }
        String when = signatory.when().recorded() ? signatory.when().toString() : "";
        return Optional.of(new FactLine(label, FactLine.or(person(signatory.name(), signatory.party())), when));
    }
}
