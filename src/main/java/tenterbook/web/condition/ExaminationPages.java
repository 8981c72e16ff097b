package tenterbook.web.condition;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.ledger.revision.Revision;
import tenterbook.piece.NumberScheme;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.ExaminationId;
import tenterbook.web.Site;
import tenterbook.web.form.ExaminationForm;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.form.Forms;
import tenterbook.web.page.NotFound;
import tenterbook.web.record.DraftPlace;
import tenterbook.web.record.RecordEditor;
import tenterbook.web.record.UploadedPhotos;

/** Examining a piece: the form of an examination, new or changed. */
public final class ExaminationPages {
    private static final NumberScheme NUMBERS = new NumberScheme("E");

    private final Site site;
    private final PhotoRegistration registration;
    private final ExaminationForm forms;

    public ExaminationPages(Site site, PhotoRegistration registration) {
        this.site = site;
        this.registration = registration;
        this.forms = new Forms(site::currency).examinations();
    }

    public void routes(RoutesConfig routes) {
        routes.get("/pieces/{number}/condition/new", this::showNew);
        routes.post("/pieces/{number}/condition", this::saveNew);
        routes.get("/examinations/{id}/edit", this::showEdit);
        routes.post("/examinations/{id}/edit", this::saveEdit);
        routes.post("/examinations/{id}/withdraw", ctx -> {
            String id = ctx.pathParam("id");
            Examination examination = site.saved(Kinds.EXAMINATION, id).record();
            editor(piece(examination.piece().value())).withdraw(ctx, id);
        });
    }

    /**
     * The next free name for an examination of this year.
     *
     * @param used as for {@link NumberScheme#next}
     */
    public static ExaminationId next(Function<String, List<String>> used, LocalDate today) {
        return new ExaminationId(NUMBERS.next(used, today.getYear()).value());
    }

    private Piece piece(String number) {
        return site.saved(Kinds.PIECE, number).record();
    }

    /** The piece of an examination, also of one that was withdrawn while somebody was typing. */
    private Piece pieceOf(Context ctx) {
        String id = ctx.pathParam("id");
        Optional<Revision> newest =
                site.ledger().history(Kinds.EXAMINATION.key(id)).stream().reduce((first, second) -> second);
        return piece(newest.map(revision -> Kinds.EXAMINATION
                        .codec()
                        .fromText(revision.json())
                        .piece()
                        .value())
                .orElseThrow(() -> NotFound.of(Kinds.EXAMINATION, id)));
    }

    private RecordEditor<Examination> newEditor(Piece piece) {
        return editor(piece, "/pieces/" + piece.number() + "/condition");
    }

    private RecordEditor<Examination> editor(Piece piece) {
        return editor(piece, "/examinations");
    }

    /** The form for examinations of one piece, which has choices and a draft of its own. */
    private RecordEditor<Examination> editor(Piece piece, String base) {
        return new RecordEditor<>(
                site,
                forms,
                new RecordEditor.About("examination-form", "pieces", base, DraftPlace.OF + piece.number()),
                examination -> "/examinations/" + examination.id(),
                () -> Map.of("desk", new ExaminationChoices(site, registration, piece)));
    }

    private void showNew(Context ctx) {
        Piece piece = piece(ctx.pathParam("number"));
        newEditor(piece).showNew(ctx, () -> {
            Form form = start(piece, ctx.queryParam("from"));
            String when = ctx.queryParam("when");
            return when == null ? form : form.put("when", when);
        });
    }

    /** Begins with what the last examination saw, or the one named; the examiner checks all of it again. */
    private Form start(Piece piece, String from) {
        List<Examination> all = site.archive().examinationsOf(piece.number());
        Examination last = from == null
                ? all.stream().reduce((first, second) -> second).orElse(null)
                : ConditionPages.of(piece, all, from);
        return NewExaminationForm.of(
                piece, last, site.certainToday(), site.archive().studio().maker());
    }

    private void saveNew(Context ctx) {
        Piece piece = piece(ctx.pathParam("number"));
        Form form = typed(ctx, piece);
        form.put("piece", piece.number())
                .put("id", next(start -> site.ledger().idsEverUsed(Kinds.EXAMINATION, start), site.today()));
        newEditor(piece).save(ctx, "", form);
    }

    private void showEdit(Context ctx) {
        Piece piece = pieceOf(ctx);
        editor(piece).showEdit(ctx, ctx.pathParam("id"));
    }

    private void saveEdit(Context ctx) {
        Piece piece = pieceOf(ctx);
        editor(piece).save(ctx, ctx.pathParam("id"), typed(ctx, piece));
    }

    /** What was sent, with a row for each uploaded file and each photograph of the piece that was ticked. */
    private Form typed(Context ctx, Piece piece) {
        Form form = Form.of(FormEncoding.fields(ctx));
        UploadedPhotos.take(ctx, form, registration, digest -> NewExaminationForm.addPhoto(form, digest, "", ""));
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
}
