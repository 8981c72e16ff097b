package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
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
import tenterbook.archive.field.TextCharacters;
import tenterbook.archive.record.Difference;
import tenterbook.ledger.Conflict;
import tenterbook.ledger.Drafts;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.ledger.StillReferenced;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.web.Site;
import tenterbook.web.form.Form;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.form.PeopleNamed;
import tenterbook.web.form.RecordForm;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Refusal;

/**
 * Shows and saves the form of one kind of record.
 *
 * <p>Whatever was typed comes back: with its problems beside the fields, with the other person's version beside it after a
 * conflict, and from the draft after a reload.
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

    /**
     * What a form's template shows.
     *
     * @param id of the record; empty for a new one
     * @param version the edit began from; 0 for a new one
     * @param action where the form posts to
     * @param draft name under which unsaved typing is kept
     * @param draftFrom when the shown draft was kept, or null where none is shown
     * @param theirs what someone else saved meanwhile; empty without a conflict
     * @param trouble a sentence above the form, or empty
     * @param withdrawn what can be done with the typing where the record was withdrawn meanwhile, else null
     */
    public record RecordFormView(
            Form form,
            String id,
            int version,
            String action,
            String draft,
            Instant draftFrom,
            List<Difference> theirs,
            String trouble,
            Withdrawn withdrawn) {
        /** Start of the names of the row that was just added; empty otherwise. */
        public String added() {
            return form.added();
        }

        RecordFormView with(Withdrawn then) {
            return new RecordFormView(form, id, version, action, draft, draftFrom, theirs, trouble, then);
        }
    }

    private static final String ASIDE = "aside";
    /**
     * The record was withdrawn while somebody was typing.
     *
     * @param history address of its history, from which it can be brought back
     * @param asNew where the typing can be sent as a new record; empty where there is no such place
     * @param key name of the field that names the new record
     */
    public record Withdrawn(String history, String asNew, String key) {}

    private static final Logger LOG = LoggerFactory.getLogger(RecordEditor.class);

    private final Site site;
    private final RecordForm<T> forms;
    private final About about;
    private final Function<T, String> path;
    private final Supplier<Map<String, Object>> choices;

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
    }

    /** The empty form, or the draft of one; {@code start} gives what is offered beforehand. */
    public void showNew(Context ctx, Supplier<Form> start) {
        showNew(ctx, start, form -> {});
    }

    /** @param then what the address adds, to an empty form as to a draft */
    public void showNew(Context ctx, Supplier<Form> start, Consumer<Form> then) {
        Optional<Drafts.Draft> draft = draft(ctx, "");
        Form form = draft.map(kept -> Form.decoded(kept.body())).orElseGet(start);
        then.accept(form);
        markAside(ctx, form);
        show(ctx, 200, view(form, "", 0, draft.map(Drafts.Draft::savedAt).orElse(null), List.of(), ""));
    }

    public void showEdit(Context ctx, String id) {
        Optional<Drafts.Draft> draft = draft(ctx, id);
        if (draft.isPresent() && withdrawn(id)) {
            Form typed = Form.decoded(draft.get().body());
            showWithdrawn(ctx, id, version(typed, 0), typed);
            return;
        }
        Saved<T> saved = found(id);
        Form form = draft.map(kept -> Form.decoded(kept.body())).orElseGet(() -> forms.filled(saved.record()));
        markAside(ctx, form);
        int version = draft.isPresent() ? version(form, saved.version()) : saved.version();
        show(ctx, 200, view(form, id, version, draft.map(Drafts.Draft::savedAt).orElse(null), List.of(), ""));
    }

    /** What was typed and not saved, or what was put aside where the address asks for that. */
    private Optional<Drafts.Draft> draft(Context ctx, String id) {
        return site.archive().ledger().drafts().find((aside(ctx) ? DraftPlace.ASIDE : "") + draftName(id));
    }

    private static boolean aside(Context ctx) {
        return ctx.queryParam(ASIDE) != null;
    }

    /** Saving what was put aside takes it out of what is kept. */
    private static void markAside(Context ctx, Form form) {
        form.put(ASIDE, aside(ctx) ? "1" : "");
    }

    private static int version(Form form, int otherwise) {
        String typed = form.value("version");
        return typed.matches("\\d{1,9}") ? Integer.parseInt(typed) : otherwise;
    }

    /** Saves a new record ({@code id} empty) or a changed one. */
    public void save(Context ctx, String id) {
        save(ctx, id, Form.of(FormEncoding.fields(ctx)));
    }

    public void save(Context ctx, String id, Form form) {
        save(ctx, id, form, act -> {}, (act, record) -> {});
    }

    /** @return whether it was saved; otherwise the form is shown again */
    public boolean save(Context ctx, String id, Form form, Consumer<LedgerTransaction> first) {
        return save(ctx, id, form, first, (act, record) -> {});
    }

    /**
     * @param first what is written in the same act, before the record; undone with it
     * @param then what is written after it, likewise
     * @return whether it was saved; otherwise the form is shown again
     */
    public boolean save(
            Context ctx,
            String id,
            Form form,
            Consumer<LedgerTransaction> first,
            BiConsumer<LedgerTransaction, T> then) {
        String order = form.text("order");
        form.put("order", "");
        int version = version(form, 0);
        if (!order.isEmpty()) {
            form.rearrange(order);
            show(ctx, 200, view(form, id, version, null, List.of(), kept(id, form)));
            return false;
        }
        if (!id.isEmpty() && withdrawn(id)) {
            showWithdrawn(ctx, id, version, form);
            return false;
        }
        T old = id.isEmpty() ? null : found(id).record();
        PeopleNamed.inForm(site.archive(), forms.kind(), form);
        T record = forms.read(form, old);
        if (record != null
                && id.isEmpty()
                && RecordView.RESERVED.equals(forms.kind().id().apply(record))) {
            form.problem(forms.part().key(), w("form.reserved", "name", RecordView.RESERVED));
        }
        if (record == null || form.hasProblems()) {
            refuse(ctx, 422, id, version, form, List.of(), "");
            return false;
        }
        try {
            Saved<T> saved = site.archive().ledger().write(site.author(), act -> {
                first.accept(act);
                Saved<T> made = act.save(forms.kind(), record, id.isEmpty() ? 0 : version, "");
                then.accept(act, record);
                return made;
            });
            discardDraft(id);
            if (form.has(ASIDE)) {
                site.archive().ledger().drafts().discard(DraftPlace.ASIDE + draftName(id));
            }
            FlashMessage.andGo(ctx, sentence(id, saved, version), path.apply(saved.record()));
            return true;
        } catch (Conflict e) {
            conflict(ctx, id, form, record, e);
        } catch (StillReferenced e) {
            refuse(ctx, 409, id, version, form, List.of(), Words.sentence(e));
        } catch (ArchiveProblem e) {
            LOG.error("The {} was not saved", forms.kind().called(), e);
            refuse(ctx, 500, id, version, form, List.of(), Words.sentence(e));
        }
        return false;
    }

    /**
     * Shows the form again and keeps the typing. The page's own script cannot be left to do it: sent within a second of the
     * last key, it has kept nothing yet, and without scripts there is none.
     */
    private void refuse(
            Context ctx, int status, String id, int version, Form form, List<Difference> theirs, String trouble) {
        show(ctx, status, view(form, id, version, null, theirs, together(trouble, kept(id, form))));
    }

    private static String together(String... sentences) {
        return Stream.of(sentences)
                .filter(sentence -> !sentence.isEmpty())
                .distinct()
                .collect(Collectors.joining(" "));
    }

    /** Keeps the typing; gives a sentence where the disk does not take it. */
    private String kept(String id, Form form) {
        try {
            site.archive().ledger().drafts().keep(draftName(id), form.encoded());
            return "";
        } catch (ArchiveProblem e) {
            return Words.sentence(e);
        }
    }

    /** What is saved is saved: a draft that stays behind is offered again and harms nothing. */
    private void discardDraft(String id) {
        try {
            site.archive().ledger().drafts().discard(draftName(id));
        } catch (ArchiveProblem e) {
            LOG.warn("The draft {} stays behind", draftName(id), e);
        }
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

    /** Whether there was a record of this name that is out of use. */
    private boolean withdrawn(String id) {
        return site.archive().ledger().find(forms.kind(), id).isEmpty()
                && !site.archive().ledger().history(forms.kind().key(id)).isEmpty();
    }

    /** The typing again, kept, with what can be done with it. */
    private void showWithdrawn(Context ctx, String id, int version, Form form) {
        String history = "/history/" + forms.kind().name() + "/" + id;
        // A form that has a name for its new one is made for a place; the typing cannot be sent there from here.
        String asNew = about.fresh().isEmpty() ? about.base() : "";
        String sentence = w("form.withdrawn-meanwhile", "kind", forms.kind().called(), "id", id);
        RecordFormView view = view(form, id, version, null, List.of(), together(sentence, kept(id, form)));
        show(ctx, 409, view.with(new Withdrawn(history, asNew, forms.part().key())));
    }

    /** Takes a record out of use. */
    public void withdraw(Context ctx, String id) {
        Saved<T> saved = found(id);
        String why = ctx.formParam("why") == null ? "" : ctx.formParam("why");
        TextCharacters.fault(why).ifPresent(sentence -> {
            throw new Refusal(sentence);
        });
        try {
            site.archive().ledger().write(site.author(), act -> {
                act.withdraw(forms.kind(), id, saved.version(), why);
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
        return site.archive().ledger().find(forms.kind(), id).orElseThrow(() -> NotFound.of(forms.kind(), id));
    }

    private String draftName(String id) {
        return forms.kind().name() + "/" + (id.isEmpty() ? about.fresh() : id);
    }

    private RecordFormView view(
            Form form, String id, int version, Instant draftFrom, List<Difference> theirs, String trouble) {
        String action = id.isEmpty() ? about.base() : about.base() + "/" + id + "/edit";
        return new RecordFormView(form, id, version, action, draftName(id), draftFrom, theirs, trouble, null);
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

    /** Uploaded files of a form that was sent without scripts. */
    public static List<UploadedFile> files(Context ctx, String field) {
        return ctx.isMultipart()
                ? ctx.uploadedFiles(field).stream()
                        .filter(file -> file.size() > 0)
                        .toList()
                : List.of();
    }
}
