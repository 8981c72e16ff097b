package tenterbook.web.piece;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tenterbook.ledger.beside.SavedSearches;
import tenterbook.ledger.beside.SavedSearches.SavedSearch;
import tenterbook.web.Site;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.FlashMessage;
import tenterbook.web.page.Html;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Searches kept by name: saving, renaming, removing, bringing back. */
public final class SavedSearchPages {
    private static final String LIST = "/searches";

    private final Site site;

    public SavedSearchPages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get(LIST, ctx -> show(ctx, 200, Typed.NOTHING));
        routes.post(LIST, this::save);
        routes.post(LIST + "/{id}/rename", this::rename);
        routes.post(LIST + "/{id}/remove", this::remove);
        routes.post(LIST + "/{id}/restore", this::bringBack);
    }

    /**
     * What was typed and refused.
     *
     * @param id of the search to be renamed; 0 for a new one
     * @param taken whether another search has the name
     * @param problem in a sentence; empty for none
     */
    public record Typed(long id, String name, String question, boolean taken, String problem) {
        static final Typed NOTHING = new Typed(0, "", "", false, "");
    }

    private SavedSearches searches() {
        return site.ledger().savedSearches();
    }

    private void save(Context ctx) {
        String name = field(ctx, "name");
        String question = field(ctx, "question");
        try {
            if (ctx.formParams("question").isEmpty()) {
                throw Refusal.of("searches.no-question");
            }
            String kept = SavedList.question(SavedList.read(site, FormEncoding.decoded(question)));
            SavedSearch saved =
                    searches().save(name, kept, !field(ctx, "replace").isEmpty());
            FlashMessage.andGo(ctx, w("searches.saved", "name", saved.name()), kept.isEmpty() ? "/" : "/?" + kept);
        } catch (Refusal e) {
            refused(ctx, e, 0, name, question);
        }
    }

    private void rename(Context ctx) {
        String name = field(ctx, "name");
        long id = id(ctx);
        try {
            SavedSearch renamed = searches().rename(id, name).orElseThrow(() -> gone(ctx));
            FlashMessage.andGo(ctx, w("searches.renamed", "name", renamed.name()), LIST);
        } catch (Refusal e) {
            refused(ctx, e, id, name, "");
        }
    }

    private void remove(Context ctx) {
        SavedSearch removed = searches().remove(id(ctx)).orElseThrow(() -> gone(ctx));
        FlashMessage.andGo(ctx, w("searches.removed", "name", removed.name()), LIST);
    }

    private void bringBack(Context ctx) {
        try {
            SavedSearch back = searches().bringBack(id(ctx)).orElseThrow(() -> gone(ctx));
            FlashMessage.andGo(ctx, w("searches.back", "name", back.name()), LIST);
        } catch (Refusal e) {
            refused(ctx, e, id(ctx), "", "");
        }
    }

    private void refused(Context ctx, Refusal e, long id, String name, String question) {
        boolean taken = e instanceof SavedSearches.NameTaken;
        show(ctx, taken ? 409 : 400, new Typed(id, name, question, taken, Words.sentence(e)));
    }

    private void show(Context ctx, int status, Typed typed) {
        ctx.status(status);
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("searches.title"), "pieces"));
        values.put("saved", SavedList.all(site));
        values.put("typed", typed);
        Html.show(ctx, "searches", values);
    }

    private static String field(Context ctx, String name) {
        List<String> values = ctx.formParams(name);
        return values.isEmpty() ? "" : values.get(0);
    }

    private static NotFound gone(Context ctx) {
        return new NotFound(Message.of("not-here.search", "id", ctx.pathParam("id")));
    }

    static long id(Context ctx) {
        return Optional.of(ctx.pathParam("id"))
                .filter(text -> text.matches("\\d{1,15}"))
                .map(Long::parseLong)
                .orElseThrow(() -> gone(ctx));
    }
}
