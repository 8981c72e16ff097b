package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.Part;
import tenterbook.archive.record.Difference;
import tenterbook.ledger.Saved;
import tenterbook.ledger.StillReferenced;
import tenterbook.ledger.Unreadable;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.Revision;
import tenterbook.web.Site;
import tenterbook.web.form.Forms;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Message;

/** Every version of every record, what changed from one to the next, and bringing an older one back. */
public final class HistoryPages {
    private static final Logger LOG = LoggerFactory.getLogger(HistoryPages.class);

    private final Site site;
    private final Forms forms;

    public HistoryPages(Site site) {
        this.site = site;
        this.forms = new Forms(site::currency);
    }

    public void routes(RoutesConfig routes) {
        routes.get("/history/{kind}/{id}", this::show);
        routes.post("/history/{kind}/{id}/bring-back", ctx -> bringBack(ctx, kind(ctx)));
    }

    /**
     * One version.
     *
     * @param changes from the last version before it that can be read; null where this one cannot be
     * @param newest whether it is the current version
     */
    public record Version(
            int version,
            Instant writtenAt,
            String author,
            String note,
            boolean withdrawn,
            String hash,
            @Nullable List<Difference> changes,
            boolean newest) {}

    private Kind<?> kind(Context ctx) {
        return Kinds.ALL.stream()
                .filter(kind -> kind.name().equals(ctx.pathParam("kind")))
                .findFirst()
                .orElseThrow(() -> new NotFound(Message.of("not-here.kind-of-record", "kind", ctx.pathParam("kind"))));
    }

    private void show(Context ctx) {
        Kind<?> kind = kind(ctx);
        String id = ctx.pathParam("id");
        List<Revision> history = site.ledger().history(kind.key(id));
        if (history.isEmpty()) {
            throw NotFound.of(kind, id);
        }
        List<Version> versions = new ArrayList<>();
        ObjectNode before = JsonNodeFactory.instance.objectNode();
        for (Revision revision : history) {
            ObjectNode now = parsed(revision);
            List<Difference> changes = now == null ? null : changes(kind, before, now, revision);
            versions.add(new Version(
                    revision.version(),
                    revision.writtenAt(),
                    revision.author(),
                    revision.note(),
                    revision.withdrawn(),
                    revision.hash().brief(),
                    changes,
                    revision.version() == history.size()));
            before = changes == null ? before : now;
        }
        Collections.reverse(versions);
        Html.show(
                ctx,
                "history",
                Map.of(
                        "page", site.page(ctx, w("titles.history", "kind", kind.called(), "id", id), ""),
                        "key", kind.key(id),
                        "path", RecordView.pathOf(kind.key(id)),
                        "editable", forms.of(kind) != null,
                        "versions", versions));
    }

    /** Null where its text is no record, for example in a damaged file. */
    private static @Nullable ObjectNode parsed(Revision revision) {
        try {
            return RecordCodec.parsed(revision.json());
        } catch (RuntimeException e) {
            return unreadable(revision, e);
        }
    }

    private static @Nullable List<Difference> changes(
            Kind<?> kind, ObjectNode before, ObjectNode now, Revision revision) {
        try {
            return kind.codec() instanceof Part<?> part ? Difference.between(part, before, now) : List.of();
        } catch (RuntimeException e) {
            return unreadable(revision, e);
        }
    }

    private static <T> @Nullable T unreadable(Revision revision, RuntimeException e) {
        LOG.warn("Revision {} of {} cannot be read", revision.sequence(), revision.key(), e);
        return null;
    }

    /** Null where there is none, or where it cannot be read: then an earlier one is what is wanted. */
    private <T> @Nullable T newest(Kind<T> kind, String id) {
        try {
            return site.ledger().find(kind, id).map(Saved::record).orElse(null);
        } catch (Unreadable e) {
            return null;
        }
    }

    private <T> void bringBack(Context ctx, Kind<T> kind) {
        String id = ctx.pathParam("id");
        String typed = String.valueOf(ctx.formParam("version"));
        int version = typed.matches("\\d{1,9}") ? Integer.parseInt(typed) : 0;
        List<Revision> history = site.ledger().history(kind.key(id));
        Saved<T> old = site.ledger()
                .version(kind, id, version)
                .orElseThrow(() -> new NotFound(
                        Message.of("not-here.version", "version", version, "kind", kind.called(), "id", id)));
        Faults faults = SaveRules.again(site, newest(kind, id), old.record());
        if (!faults.isEmpty()) {
            FlashMessage.andGo(
                    ctx,
                    w("form.not-brought-back", "version", version, "why", faults.inOneLine()),
                    "/history/" + kind.name() + "/" + id);
            return;
        }
        try {
            site.write(act -> act.save(
                    kind,
                    old.record(),
                    history.get(version - 1).json(),
                    history.size(),
                    w("form.brought-back-note", "version", version)));
            FlashMessage.andGo(
                    ctx,
                    w("form.brought-back", "version", version, "kind", kind.called(), "id", id),
                    RecordView.pathOf(kind.key(id)));
        } catch (StillReferenced e) {
            FlashMessage.andGo(ctx, Words.sentence(e), "/history/" + kind.name() + "/" + id);
        }
    }
}
