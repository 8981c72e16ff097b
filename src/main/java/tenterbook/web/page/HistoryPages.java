package tenterbook.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.ledger.Kind;
import tenterbook.ledger.Revision;
import tenterbook.ledger.Saved;
import tenterbook.ledger.StillNamed;
import tenterbook.web.Html;
import tenterbook.web.NotHere;
import tenterbook.web.Said;
import tenterbook.web.Site;
import tenterbook.web.form.BoardForm;
import tenterbook.web.form.ClampingForm;
import tenterbook.web.form.ClothForm;
import tenterbook.web.form.Difference;
import tenterbook.web.form.ExaminationForm;
import tenterbook.web.form.Form;
import tenterbook.web.form.LotForm;
import tenterbook.web.form.PartyForm;
import tenterbook.web.form.PieceForm;
import tenterbook.web.form.RecordForm;
import tenterbook.web.form.StudioForm;

/** Every version of every record, what changed from one to the next, and bringing an older one back. */
public final class HistoryPages {
    private final Site site;
    private final Map<String, RecordForm<?>> forms;

    public HistoryPages(Site site) {
        this.site = site;
        this.forms = Map.of(
                Kinds.PIECE.name(), new PieceForm(site::currency),
                Kinds.CLAMPING.name(), new ClampingForm(),
                Kinds.BOARD_PAIR.name(), new BoardForm(),
                Kinds.CLOTH.name(), new ClothForm(site::currency),
                Kinds.LOT.name(), new LotForm(site::currency),
                Kinds.PARTY.name(), new PartyForm(),
                Kinds.EXAMINATION.name(), new ExaminationForm(),
                Kinds.STUDIO.name(), new StudioForm());
    }

    public void routes(RoutesConfig routes) {
        routes.get("/history/{kind}/{id}", this::show);
        routes.post("/history/{kind}/{id}/bring-back", this::bringBack);
    }

    /**
     * One version.
     *
     * @param changes from the version before
     * @param newest whether it is the record as it stands
     */
    public record Version(
            int version,
            Instant writtenAt,
            String author,
            String note,
            boolean withdrawn,
            String hash,
            List<Difference> changes,
            boolean newest) {}

    private Kind<?> kind(Context ctx) {
        return Kinds.ALL.stream()
                .filter(kind -> kind.name().equals(ctx.pathParam("kind")))
                .findFirst()
                .orElseThrow(() -> new NotHere("kind of record “" + ctx.pathParam("kind") + "”"));
    }

    private void show(Context ctx) {
        Kind<?> kind = kind(ctx);
        String id = ctx.pathParam("id");
        List<Revision> history = site.archive().ledger().history(kind.key(id));
        if (history.isEmpty()) {
            throw new NotHere(kind.called() + " “" + id + "”");
        }
        List<Version> versions = new ArrayList<>();
        Form before = Form.empty();
        for (Revision revision : history) {
            Form now = form(kind, revision);
            versions.add(new Version(
                    revision.version(),
                    revision.writtenAt(),
                    revision.author(),
                    revision.note(),
                    revision.withdrawn(),
                    revision.hash().brief(),
                    Difference.between(before, now),
                    revision.version() == history.size()));
            before = now;
        }
        Collections.reverse(versions);
        Html.show(
                ctx,
                "history",
                Map.of(
                        "page", site.page(ctx, "History of " + kind.called() + " " + id, ""),
                        "key", kind.key(id),
                        "path", RecordView.pathOf(kind.key(id)),
                        "editable", forms.containsKey(kind.name()),
                        "versions", versions));
    }

    @SuppressWarnings("unchecked")
    private <T> Form form(Kind<T> kind, Revision revision) {
        RecordForm<T> form = (RecordForm<T>) forms.get(kind.name());
        return form == null
                ? Form.empty()
                : form.filled(site.archive().ledger().saved(kind, revision).record());
    }

    private void bringBack(Context ctx) {
        bringBack(ctx, kind(ctx));
    }

    private <T> void bringBack(Context ctx, Kind<T> kind) {
        String id = ctx.pathParam("id");
        String typed = String.valueOf(ctx.formParam("version"));
        int version = typed.matches("\\d{1,9}") ? Integer.parseInt(typed) : 0;
        List<Revision> history = site.archive().ledger().history(kind.key(id));
        Saved<T> old = site.archive()
                .ledger()
                .version(kind, id, version)
                .orElseThrow(() -> new NotHere("version " + version + " of " + kind.called() + " " + id));
        try {
            site.archive()
                    .ledger()
                    .write(
                            site.author(),
                            act -> act.save(
                                    kind,
                                    old.record(),
                                    history.get(version - 1).json(),
                                    history.size(),
                                    "Version %d brought back".formatted(version)));
            Said.andGo(
                    ctx,
                    "Version %d of %s %s is back. The versions in between stay in its history."
                            .formatted(version, kind.called(), id),
                    RecordView.pathOf(kind.key(id)));
        } catch (StillNamed e) {
            Said.andGo(ctx, e.getMessage(), "/history/" + kind.name() + "/" + id);
        }
    }
}
