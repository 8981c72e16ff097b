package tenterbook.web.act;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Kinds;
import tenterbook.archive.act.ActFields;
import tenterbook.archive.act.Correction;
import tenterbook.archive.field.InputRefused;
import tenterbook.archive.record.PieceRecord;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;
import tenterbook.piece.history.Custody;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.form.PartForm;
import tenterbook.web.form.PeopleNamed;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;
import tenterbook.web.record.Choices;
import tenterbook.words.Refusal;

/** Putting right what was recorded wrongly of something that happened to a piece: first which, then a short form. */
public final class CorrectionPages {
    private final Site site;
    private final PartForm<Event> sales;
    private final PartForm<Event> others;

    public CorrectionPages(Site site) {
        this.site = site;
        this.sales = new PartForm<>(PieceRecord.EVENT, Set.of("kind"), site::currency);
        this.others = new PartForm<>(PieceRecord.EVENT, Set.of("kind", "taxWay", "taxRate", "tax"), site::currency);
    }

    /** Before those of the acts, whose addresses have the same form. */
    public void routes(RoutesConfig routes) {
        routes.get("/acts/correct", this::ask);
        routes.post("/acts/correct", this::record);
    }

    /**
     * One event that may be chosen.
     *
     * @param event its place among the events of the piece, from 0
     */
    public record Line(int at, Event event) {}

    /**
     * @param lines the events, in order of time
     * @param was the event that is corrected, as its form sends it; empty while one is to be chosen
     * @param event null while one is to be chosen
     */
    public record View(
            Piece piece,
            List<Line> lines,
            Form form,
            @Nullable Event event,
            String was,
            List<Choices.Choice> people) {
        public boolean sale() {
            return event != null && event.kind() == EventKind.SOLD;
        }

        /** Whether the form has the field: the act asks it, or the event holds it. */
        public boolean asks(String field) {
            return event != null && ActFields.offers(event, field);
        }

        public List<Choices.Choice> taxWays() {
            return Choices.taxWays();
        }
    }

    private PartForm<Event> forms(Event event) {
        return event.kind() == EventKind.SOLD ? sales : others;
    }

    private Piece piece(@Nullable String number) {
        return site.saved(Kinds.PIECE, number == null ? "" : number).record();
    }

    private void ask(Context ctx) {
        Piece piece = piece(ctx.queryParam("piece"));
        String at = ctx.queryParam("event");
        if (at == null) {
            show(ctx, 200, piece, Form.empty(), null);
            return;
        }
        if (!at.matches("\\d{1,4}") || Integer.parseInt(at) >= piece.events().size()) {
            throw Refusal.of("act.correct.no-such-event", "number", piece.shown());
        }
        Event event = piece.events().get(Integer.parseInt(at));
        Form form = forms(event).filled(event);
        PeopleNamed.show(site.archive(), form, "party");
        show(ctx, 200, piece, form, event);
    }

    private void show(Context ctx, int status, Piece piece, Form form, @Nullable Event event) {
        List<Line> lines = Custody.inTime(piece.events()).stream()
                .map(each -> new Line(piece.events().indexOf(each), each))
                .toList();
        String was = event == null ? "" : PieceRecord.EVENT.write(event).toString();
        ctx.status(status);
        Html.show(
                ctx,
                "correct",
                Map.of(
                        "page",
                        site.page(ctx, w("act.correct"), "pieces"),
                        "view",
                        new View(piece, lines, form, event, was, Choices.parties(site))));
    }

    private void record(Context ctx) {
        Form form = Form.of(FormEncoding.fields(ctx));
        Piece piece = piece(form.text("piece"));
        Event was = PieceRecord.EVENT.fromJson(RecordCodec.parsed(form.text("was")));
        String typed = form.text("party");
        PeopleNamed.put(site.archive(), form, "party");
        Event as = forms(was).read(form, was);
        form.put("party", typed);
        if (as == null) {
            show(ctx, 422, piece, form, was);
            return;
        }
        try {
            new Correction(piece.number(), was, as, form.text("reason")).write(site.archive());
            FlashMessage.andGo(ctx, w("act.correct.done", "event", was.kind()), "/pieces/" + piece.shown());
        } catch (InputRefused e) {
            e.problems().forEach((at, why) -> form.problem(beside(at), w(why)));
            show(ctx, 422, piece, form, was);
        } catch (Conflict | ArchiveProblem e) {
            form.problem("reason", Words.sentence(e));
            show(ctx, e instanceof Conflict ? 409 : 500, piece, form, was);
        }
    }

    /** The field of the form for one of a correction. */
    private static String beside(String at) {
        if (at.startsWith("as.")) {
            return at.substring("as.".length());
        }
        return at.equals("reason") ? at : "note";
    }
}
