package tenterbook.web.act;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import tenterbook.archive.act.ActFields;
import tenterbook.archive.act.ActRequest;
import tenterbook.archive.act.ActWriter;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.archive.field.InputRefused;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.measure.Digest;
import tenterbook.measure.Money;
import tenterbook.piece.Piece;
import tenterbook.piece.history.Act;
import tenterbook.piece.history.ActField;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.form.PartForm;
import tenterbook.web.form.PeopleNamed;
import tenterbook.web.form.TypedNumber;
import tenterbook.web.found.ChosenPieces;
import tenterbook.web.page.Address;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.web.record.UploadedPhotos;
import tenterbook.words.Message;

/** Selling, lending, moving and all else that happens to pieces, to one or to several at once. */
public final class ActPages {
    /** More at once are no longer looked at one by one. */
    private static final int MOST = 200;

    private final Site site;
    private final PhotoRegistration registration;
    private final PartForm<ActRequest> forms;

    public ActPages(Site site, PhotoRegistration registration) {
        this.site = site;
        this.registration = registration;
        this.forms = new PartForm<>(ActFields.ACT, Set.of(), site::currency);
    }

    public void routes(RoutesConfig routes) {
        routes.get("/acts", this::choose);
        routes.get("/acts/{act}", this::ask);
        routes.post("/acts/{act}", this::record);
        routes.get("/acts/{act}/done", this::done);
    }

    static Act act(Context ctx) {
        String word = ctx.pathParam("act");
        return Act.of(word).orElseThrow(() -> new NotFound(Message.of("act.no-such-act", "found", word)));
    }

    /** One act that may be chosen. */
    public record Choice(Act act, String address, int possible) {}

    private void choose(Context ctx) {
        List<Saved<Piece>> pieces = chosen(ctx);
        String numbers = ChosenPieces.joined(pieces);
        List<Choice> choices = Arrays.stream(Act.values())
                .map(act -> new Choice(act, address(act, numbers), (int) pieces.stream()
                        .filter(piece -> act.possible(piece.record()))
                        .count()))
                .toList();
        Html.show(
                ctx,
                "acts",
                Map.of("page", site.page(ctx, w("act.choose"), "pieces"), "choices", choices, "pieces", pieces));
    }

    static String address(Act act, String numbers) {
        return "/acts/" + act + "?pieces=" + Address.encoded(numbers);
    }

    private List<Saved<Piece>> chosen(Context ctx) {
        Map<String, List<String>> parameters = ctx.queryParamMap();
        var found = ChosenPieces.find(site, parameters, parameters, MOST);
        return ChosenPieces.saved(site, found.numbers());
    }

    private void ask(Context ctx) {
        Act act = act(ctx);
        Form form = Form.empty().put("when", site.certainToday());
        List<Saved<Piece>> pieces = chosen(ctx);
        for (int i = 0; i < Math.max(1, pieces.size()); i++) {
            Form row = form.row("pieces", i);
            row.put("piece", pieces.isEmpty() ? "" : pieces.get(i).record().number());
            Money asked = pieces.isEmpty() ? null : pieces.get(i).record().price();
            if (act == Act.CONSIGN && asked != null) {
                row.put("price", asked);
            }
        }
        show(ctx, 200, act, form, "");
    }

    private void show(Context ctx, int status, Act act, Form form, String newPerson) {
        ctx.status(status);
        int pieces = form.rows("pieces").size();
        Html.show(
                ctx,
                "act",
                Map.of(
                        "page",
                        site.page(ctx, w("act.title", "act", act, "pieces", pieces), "pieces"),
                        "view",
                        ActView.of(site, act, form, newPerson)));
    }

    private void record(Context ctx) {
        Act act = act(ctx);
        Form form = Form.of(FormEncoding.fields(ctx));
        if (act.asks(ActField.PHOTOGRAPHS)) {
            UploadedPhotos.take(ctx, form, registration, photo -> form.put("photos", with(form.text("photos"), photo)));
        }
        form.rows("pieces").forEach(row -> TypedNumber.put(site.archive(), row, "piece"));
        if (form.rearranged()) {
            show(ctx, 200, act, form, "");
            return;
        }
        String typed = form.text("party");
        String newPerson = newPerson(act, form, typed);
        ActRequest request = forms.read(form, null);
        form.put("party", typed);
        if (request == null) {
            show(ctx, 422, act, form, newPerson);
            return;
        }
        try {
            ActWriter.Done done = new ActWriter(site.archive(), act, request, site.today()).write();
            ctx.redirect(address(act, done), io.javalin.http.HttpStatus.SEE_OTHER);
        } catch (InputRefused e) {
            e.problems().forEach((at, why) -> form.problem(at, w(why)));
            show(ctx, 422, act, form, newPerson);
        } catch (Conflict | ArchiveProblem e) {
            form.problem("note", Words.sentence(e));
            show(ctx, e instanceof Conflict ? 409 : 500, act, form, newPerson);
        }
    }

    private static String with(String photos, Digest another) {
        return photos.isEmpty() ? another.hex() : photos + ", " + another.hex();
    }

    /** The name in the form that nobody has; it becomes the name of a new person where that is confirmed. */
    private String newPerson(Act act, Form form, String typed) {
        if (!act.asks(ActField.PARTY) || typed.isEmpty()) {
            return "";
        }
        if (form.text("addPerson").equals(typed)) {
            form.put("newPerson", typed).put("party", "");
            return typed;
        }
        Form asked = Form.empty().put("party", typed);
        PeopleNamed.put(site.archive(), asked, "party");
        if (!asked.hasProblems()) {
            form.put("party", asked.text("party"));
            return "";
        }
        boolean nobody = site.archive().partiesCalled(typed).isEmpty();
        form.problem("party", nobody ? w("act.nobody", "name", typed) : asked.problem("party"));
        form.put("party", "");
        return nobody ? typed : "";
    }

    private static String address(Act act, ActWriter.Done done) {
        String numbers = done.pieces().stream().map(Object::toString).collect(Collectors.joining(","));
        List<String> more = new ArrayList<>();
        more.add("pieces=" + Address.encoded(numbers));
        if (done.party() != null) {
            more.add("party=" + Address.encoded(done.party().value()));
        }
        if (done.agreement() != null) {
            more.add("agreement=" + Address.encoded(done.agreement().value()));
        }
        return "/acts/" + act + "/done?" + String.join("&", more);
    }

    private void done(Context ctx) {
        Act act = act(ctx);
        Html.show(
                ctx,
                "act-done",
                Map.of(
                        "page",
                        site.page(ctx, w("act.done-title"), "pieces"),
                        "view",
                        ActDoneView.of(site, act, chosen(ctx), ctx.queryParam("party"), ctx.queryParam("agreement"))));
    }
}
