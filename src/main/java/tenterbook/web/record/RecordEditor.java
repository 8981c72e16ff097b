package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.NewIdentifier;
import tenterbook.archive.record.Difference;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.ledger.StillReferenced;
import tenterbook.ledger.beside.Drafts;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.LedgerClock;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.form.PeopleNamed;
import tenterbook.web.form.RecordForm;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.Words;

/**
 * Shows and saves the form of one kind of record.
 *
 * <p>Nothing typed is lost: it is shown again with its problems beside the fields, after a conflict with the other person's
 * version beside it, and after a reload from the draft.
 */
public final class RecordEditor<T> {
    /**
     * @param template of the form
     * @param section of the menu
     * @param base path of the list of this kind, as in {@code /boards}
     * @param fresh name under which the typing of a new one is kept; empty where there is one such form of its kind
     */
    public record About(String template, String section, String base, String fresh) {
        public About(String template, String section, String base) {
            this(template, section, base, "");
        }
    }

    private static final Logger LOG = LoggerFactory.getLogger(RecordEditor.class);

    private final Site site;
    private final RecordForm<T> forms;
    private final About about;
    private final Function<T, String> path;
    private final Supplier<Map<String, Object>> choices;
    private final RecordDrafts drafts;

    public RecordEditor(
            Site site,
            RecordForm<T> forms,
            About about,
            Function<T, String> path,
            Supplier<Map<String, Object>> choices) {
        this.site = site;
        this.forms = forms;
        this.about = about;
        this.path = path;
        this.choices = choices;
        this.drafts = new RecordDrafts(site.ledger().drafts(), forms.kind().name(), about.fresh());
    }

    /** Routes to the form of a new record, which begins as {@code start} gives it, to that of an old one, and to withdrawing. */
    public void routes(RoutesConfig routes, Function<Context, Form> start) {
        routes.get(about.base() + "/new", ctx -> showNew(ctx, () -> start.apply(ctx)));
        routes.post(about.base(), ctx -> save(ctx, ""));
        routes.get(about.base() + "/{id}/edit", ctx -> showEdit(ctx, ctx.pathParam("id")));
        routes.post(about.base() + "/{id}/edit", ctx -> save(ctx, ctx.pathParam("id")));
        routes.post(about.base() + "/{id}/withdraw", ctx -> withdraw(ctx, ctx.pathParam("id")));
    }

    /** The empty form, or the draft of one; {@code start} gives what is offered beforehand. */
    public void showNew(Context ctx, Supplier<Form> start) {
        showNew(ctx, start, form -> {});
    }

    /** @param then what the address adds, to an empty form as to a draft */
    public void showNew(Context ctx, Supplier<Form> start, Consumer<Form> then) {
        Optional<Drafts.Draft> draft = drafts.find(ctx, "");
        Form form = draft.map(kept -> Form.decoded(kept.body())).orElseGet(start);
        then.accept(form);
        RecordDrafts.mark(ctx, form);
        show(ctx, 200, view(form, "", 0, draft.map(Drafts.Draft::savedAt).orElse(null), List.of(), ""));
    }

    public void showEdit(Context ctx, String id) {
        Optional<Drafts.Draft> draft = drafts.find(ctx, id);
        if (draft.isPresent() && withdrawn(id)) {
            Form typed = Form.decoded(draft.get().body());
            showWithdrawn(ctx, id, typed.version(0), typed);
            return;
        }
        Saved<T> saved = found(id);
        Form form = draft.map(kept -> Form.decoded(kept.body())).orElseGet(() -> forms.filled(saved.record()));
        RecordDrafts.mark(ctx, form);
        int version = draft.isPresent() ? form.version(saved.version()) : saved.version();
        show(ctx, 200, view(form, id, version, draft.map(Drafts.Draft::savedAt).orElse(null), List.of(), ""));
    }

    /** Saves a new record ({@code id} empty) or a changed one. */
    public void save(Context ctx, String id) {
        save(ctx, id, Form.of(FormEncoding.fields(ctx)));
    }

    public void save(Context ctx, String id, Form form) {
        save(ctx, id, form, act -> {}, (act, record) -> {});
    }

    /**
     * @param first written in the same transaction, before the record
     * @param then written in the same transaction, after the record
     * @return whether it was saved; otherwise the form is shown again
     */
    public boolean save(
            Context ctx,
            String id,
            Form form,
            Consumer<LedgerTransaction> first,
            BiConsumer<LedgerTransaction, T> then) {
        int version = form.version(0);
        boolean inPlace = MadeInPlace.asked(form);
        if (inPlace) {
            new MadeInPlace(site).make(form);
        }
        if (inPlace || form.rearranged()) {
            show(ctx, 200, view(form, id, version, null, List.of(), drafts.keep(id, form)));
            return false;
        }
        if (clockDoubted(ctx, id, form)) {
            return false;
        }
        if (!id.isEmpty() && withdrawn(id)) {
            showWithdrawn(ctx, id, version, form);
            return false;
        }
        T old = id.isEmpty() ? null : found(id).record();
        new MadeInPlace(site).makeRest(form);
        if (id.isEmpty()) {
            ShortCodes.fill(site, forms.kind(), form);
        }
        PeopleNamed.inForm(site.archive(), forms.kind(), form);
        SaveRules rules = new SaveRules(site);
        T record = rules.applied(forms, form, old, forms.read(form, old));
        if (record != null
                && id.isEmpty()
                && NewIdentifier.RESERVED.equals(forms.kind().id().apply(record))) {
            form.problem(forms.part().key(), w("form.reserved", "name", NewIdentifier.RESERVED));
        }
        if (record == null || form.hasProblems()) {
            refuse(ctx, 422, id, version, form, List.of(), "");
            return false;
        }
        try {
            Saved<T> saved = site.write(act -> {
                first.accept(act);
                Saved<T> made = act.save(forms.kind(), record, id.isEmpty() ? 0 : version, "");
                then.accept(act, record);
                rules.spread(act, record);
                return made;
            });
            drafts.discard(id, form);
            FlashMessage.andGo(ctx, sentence(id, saved, version), path.apply(saved.record()));
            return true;
        } catch (Conflict e) {
            conflict(ctx, id, form, record, e);
        } catch (StillReferenced e) {
            refuse(ctx, 409, id, version, form, List.of(), Words.sentence(e));
        } catch (ArchiveProblem e) {
            LOG.error("The {} was not saved", forms.kind().called(), e);
            // The draft would go to the same ledger, and wait for it as long again.
            show(ctx, 500, view(form, id, version, null, List.of(), Words.sentence(e)));
        }
        return false;
    }

    /** Shows the form again where the computer's clock is in doubt, before anything is numbered by its year. */
    public boolean clockDoubted(Context ctx, String id, Form form) {
        Optional<LedgerClock.Doubt> doubt = site.ledger().clock().doubt();
        doubt.ifPresent(each -> refuse(ctx, 409, id, form.version(0), form, List.of(), w(each.refusal())));
        return doubt.isPresent();
    }

    /**
     * Shows the form again and keeps the typing. The page's script keeps it only a second after the last key, and not at all
     * where scripts are off.
     */
    private void refuse(
            Context ctx, int status, String id, int version, Form form, List<Difference> theirs, String trouble) {
        show(ctx, status, view(form, id, version, null, theirs, together(trouble, drafts.keep(id, form))));
    }

    private static String together(String... sentences) {
        return Stream.of(sentences)
                .filter(sentence -> !sentence.isEmpty())
                .distinct()
                .collect(Collectors.joining(" "));
    }

    private String sentence(String id, Saved<T> saved, int version) {
        if (!id.isEmpty() && saved.version() == version) {
            return w("form.nothing-had-changed");
        }
        return w(
                "form.saved",
                "kind",
                forms.kind().called(),
                "id",
                forms.kind().id().apply(saved.record()));
    }

    private void conflict(Context ctx, String id, Form form, T record, Conflict e) {
        if (id.isEmpty()) {
            form.problem(forms.part().key(), Words.sentence(e));
            refuse(ctx, 409, id, 0, form, List.of(), "");
            return;
        }
        if (withdrawn(id)) {
            showWithdrawn(ctx, id, e.expected(), form);
            return;
        }
        Saved<T> theirs = found(id);
        List<Difference> differences = Difference.between(forms.part(), theirs.record(), record);
        form.put("version", theirs.version());
        String why =
                e.expected() == 0 ? w(Conflict.never(e.key(), forms.kind().called(), 0, e.found())) : Words.sentence(e);
        refuse(ctx, 409, id, theirs.version(), form, differences, why);
    }

    /** Whether there is a record of this name and it is out of use. */
    private boolean withdrawn(String id) {
        return site.ledger().find(forms.kind(), id).isEmpty()
                && !site.ledger().history(forms.kind().key(id)).isEmpty();
    }

    /** Shows the typing again, keeps it, and offers what can be done with it. */
    private void showWithdrawn(Context ctx, String id, int version, Form form) {
        String history = "/history/" + forms.kind().name() + "/" + id;
        // With a name for its new record the form depends on where it is opened, so the typing cannot be sent there.
        String asNew = about.fresh().isEmpty() ? about.base() : "";
        String sentence = w("form.withdrawn-meanwhile", "kind", forms.kind().called(), "id", id);
        RecordFormView view = view(form, id, version, null, List.of(), together(sentence, drafts.keep(id, form)));
        show(
                ctx,
                409,
                view.with(new RecordFormView.Withdrawn(
                        history, asNew, forms.part().key())));
    }

    public void withdraw(Context ctx, String id) {
        Saved<T> saved = found(id);
        String why = RecordInput.note(ctx.formParam("why"));
        try {
            site.write(act -> {
                act.withdraw(forms.kind(), forms.kind().id().apply(saved.record()), saved.version(), why);
                return null;
            });
            FlashMessage.andGo(
                    ctx,
                    w("form.withdrew", "kind", forms.kind().called(), "id", id),
                    "/history/" + forms.kind().name() + "/" + id);
        } catch (StillReferenced e) {
            FlashMessage.andGo(ctx, Words.sentence(e), path.apply(saved.record()));
        }
    }

    private Saved<T> found(String id) {
        return site.saved(forms.kind(), id);
    }

    private RecordFormView view(
            Form form, String id, int version, Instant draftFrom, List<Difference> theirs, String trouble) {
        String action = id.isEmpty() ? about.base() : about.base() + "/" + id + "/edit";
        return new RecordFormView(form, id, version, action, drafts.name(id), draftFrom, theirs, trouble, null);
    }

    private void show(Context ctx, int status, RecordFormView view) {
        String title = view.id().isEmpty()
                ? w("titles.new", "kind", forms.kind().called())
                : w("titles.change-record", "kind", forms.kind().called(), "id", view.id());
        Map<String, Object> values = new HashMap<>(choices.get());
        values.put("page", site.page(ctx, title, about.section()));
        values.put("view", view);
        ctx.status(status);
        Html.show(ctx, about.template(), values);
    }
}
