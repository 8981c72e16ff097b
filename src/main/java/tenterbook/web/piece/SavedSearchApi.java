package tenterbook.web.piece;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import tenterbook.ledger.beside.SavedSearches;
import tenterbook.ledger.beside.SavedSearches.SavedSearch;
import tenterbook.web.Site;
import tenterbook.web.form.FormEncoding;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Searches kept by name, over HTTP. */
public final class SavedSearchApi {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Site site;

    public SavedSearchApi(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/api/searches", this::list);
        routes.post("/api/searches", this::save);
        routes.delete("/api/searches/{id}", this::remove);
    }

    /** @param count absent where the search cannot be read any more, which {@code problem} explains */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Answer(long id, String name, String question, String savedAt, Long count, String problem) {}

    private Answer answer(SavedSearch search) {
        SavedList.Saved now = SavedList.of(site, search, true);
        return new Answer(
                search.id(),
                search.name(),
                search.question(),
                search.savedAt().toString(),
                now.count(),
                now.problem().isEmpty() ? null : now.problem());
    }

    private SavedSearches searches() {
        return site.ledger().savedSearches();
    }

    private void list(Context ctx) {
        ctx.json(new Answers(searches().all().stream().map(this::answer).toList()));
    }

    @JsonInclude(JsonInclude.Include.ALWAYS)
    record Answers(List<Answer> searches) {}

    private void save(Context ctx) {
        JsonNode given;
        try {
            given = JSON.readTree(ctx.body());
        } catch (JsonProcessingException e) {
            throw new Refusal(Message.of("searches.no-json"), e);
        }
        if (given == null
                || !given.path("name").isTextual()
                || !given.path("question").isTextual()) {
            throw Refusal.of("searches.no-json");
        }
        String question = SavedList.question(
                SavedList.read(site, FormEncoding.decoded(given.get("question").textValue())));
        try {
            SavedSearch saved = searches()
                    .save(
                            given.get("name").textValue(),
                            question,
                            given.path("replace").asBoolean(false));
            ctx.status(201);
            ctx.json(answer(saved));
        } catch (SavedSearches.NameTaken e) {
            ctx.status(409);
            ctx.json(Map.of("error", Words.sentence(e)));
        }
    }

    private void remove(Context ctx) {
        SavedSearch removed = searches()
                .remove(SavedSearchPages.id(ctx))
                .orElseThrow(() -> new NotFound(Message.of("not-here.search", "id", ctx.pathParam("id"))));
        ctx.json(Map.of("id", removed.id(), "name", removed.name(), "removed", true));
    }
}
