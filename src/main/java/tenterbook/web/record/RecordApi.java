package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Faults;
import tenterbook.archive.field.InputRefused;
import tenterbook.archive.field.Part;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.Revision;
import tenterbook.web.Site;
import tenterbook.web.page.Address;
import tenterbook.web.page.NotFound;
import tenterbook.words.Refusal;

/**
 * The records of one kind over HTTP: create, read, list, change, withdraw, history. A change and a
 * withdrawal name the version they were made from in {@code If-Match} (RFC 9110), so that nobody's work is overwritten unnoticed.
 */
public final class RecordApi<T> {
    private static final int MOST_LISTED = 500;
    private final Site site;
    private final RecordPath<T> path;
    private final Kind<T> kind;
    private final Part<T> part;
    private final RecordInput<T> input;

    public RecordApi(Site site, RecordPath<T> path) {
        this.site = site;
        this.path = path;
        this.kind = path.kind();
        this.part = path.part();
        this.input = new RecordInput<>(site, kind, part);
    }

    public void routes(RoutesConfig routes) {
        String one = path.one();
        if (path.single()) {
            routes.get(one, ctx -> read(ctx, path.onlyId()));
            routes.put(one, ctx -> change(ctx, path.onlyId()));
            routes.get(one + "/history", ctx -> history(ctx, path.onlyId()));
            return;
        }
        if (path.listed()) {
            routes.get(path.base(), this::list);
        }
        if (path.created()) {
            routes.post(path.base(), this::create);
        }
        if (path.read()) {
            routes.get(one, ctx -> read(ctx, id(ctx)));
        }
        routes.put(one, ctx -> change(ctx, id(ctx)));
        routes.delete(one, this::withdraw);
        routes.get(one + "/history", ctx -> history(ctx, id(ctx)));
    }

    private String id(Context ctx) {
        return ctx.pathParam(path.parameter());
    }

    public ObjectNode answer(Saved<T> saved) {
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        if (!part.key().isEmpty()) {
            answer.put(part.key(), kind.id().apply(saved.record()));
        }
        answer.put("version", saved.version());
        answer.put("savedAt", saved.writtenAt().toString());
        answer.set(path.member(), part.write(saved.record()));
        return answer;
    }

    private void send(Context ctx, int status, Saved<T> saved) {
        ctx.status(status);
        ctx.header("ETag", "\"" + saved.version() + "\"");
        ctx.json(answer(saved));
    }

    private Saved<T> found(String id) {
        return site.saved(kind, id);
    }

    private void list(Context ctx) {
        int page = whole(ctx, "page", 1, 1, 1_000_000);
        int size = whole(ctx, "size", 50, 1, MOST_LISTED);
        List<Saved<T>> all = site.ledger().all(kind);
        ctx.json(new Listed(
                all.size(),
                page,
                size,
                all.stream()
                        .skip((page - 1L) * size)
                        .limit(size)
                        .map(this::answer)
                        .toList()));
    }

    /** One page of the records of a kind; the list is there where it is empty, too. */
    @JsonInclude(JsonInclude.Include.ALWAYS)
    public record Listed(int total, int page, int size, List<ObjectNode> records) {}

    private static int whole(Context ctx, String name, int usual, int least, int most) {
        String text = ctx.queryParam(name);
        if (text == null || text.isBlank()) {
            return usual;
        }
        if (!text.matches("\\d{1,7}") || Integer.parseInt(text) < least || Integer.parseInt(text) > most) {
            throw Refusal.of("api.parameter-whole", "name", name, "least", least, "most", most, "found", text);
        }
        return Integer.parseInt(text);
    }

    private void create(Context ctx) {
        ObjectNode sent = input.sent(ctx);
        Saved<T> saved = site.write(act -> {
            if (!sent.hasNonNull(part.key())) {
                refuseEmpty(sent);
                number(sent, act);
            }
            SaveRules rules = new SaveRules(site);
            T record = rules.settled(null, input.read(sent));
            rules.check(kind, null, record);
            Saved<T> made = act.create(kind, record);
            rules.spread(act, record);
            return made;
        });
        ctx.header("Location", path.base() + "/" + Address.encoded(kind.id().apply(saved.record())));
        send(ctx, 201, saved);
    }

    /** A piece of which nothing is known uses up no number; one that is wanted so is given its number. */
    private void refuseEmpty(ObjectNode sent) {
        if (kind.equals(Kinds.PIECE) && sent.isEmpty()) {
            Faults faults = new Faults();
            faults.add("", w("piece-form.empty"));
            throw new InputRefused(kind.called(), faults);
        }
    }

    /** The next free number, in the same transaction, so that two programs never get the same one. */
    private void number(ObjectNode sent, LedgerTransaction act) {
        String next = path.next(site, start -> act.idsEverUsed(kind, start));
        if (!next.isEmpty()) {
            sent.set(part.key(), TextNode.valueOf(next));
        }
    }

    private void read(Context ctx, String id) {
        send(ctx, 200, found(id));
    }

    /** Replaces the record; fields that the program does not know stay as they are. */
    private void change(Context ctx, String id) {
        ObjectNode sent = input.sent(ctx);
        int expected = input.version(ctx);
        Saved<T> before = found(id);
        if (!part.key().isEmpty()) {
            JsonNode named = sent.get(part.key());
            String first = kind.id().apply(before.record());
            if (named != null && !named.asText().equals(first)) {
                Faults faults = new Faults();
                faults.add(
                        part.key(),
                        w("api.name-never-changes", "kind", kind.called(), "id", first, "sent", named.asText()));
                throw new InputRefused(kind.called(), faults);
            }
            sent.put(part.key(), first);
        }
        SaveRules rules = new SaveRules(site);
        T record = rules.settled(before.record(), input.read(sent));
        rules.check(kind, before.record(), record);
        String note = RecordInput.note(ctx.queryParam("note"));
        send(ctx, 200, site.write(act -> {
            Saved<T> made = act.save(kind, record, expected, note);
            rules.spread(act, record);
            return made;
        }));
    }

    private void withdraw(Context ctx) {
        String id = id(ctx);
        int expected = input.version(ctx);
        Saved<T> before = found(id);
        site.write(act -> {
            act.withdraw(kind, kind.id().apply(before.record()), expected, RecordInput.note(ctx.queryParam("note")));
            return null;
        });
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put(part.key(), kind.id().apply(before.record()));
        answer.put("version", expected + 1);
        answer.put("withdrawn", true);
        ctx.json(answer);
    }

    private void history(Context ctx, String id) {
        List<Revision> history = site.ledger().history(kind.key(id));
        if (history.isEmpty()) {
            throw NotFound.of(kind, id);
        }
        List<Map<String, Object>> versions = new ArrayList<>();
        for (Revision revision : history) {
            Map<String, Object> version = new LinkedHashMap<>();
            version.put("version", revision.version());
            version.put("savedAt", revision.writtenAt());
            version.put("author", revision.author());
            version.put("note", revision.note());
            version.put("withdrawn", revision.withdrawn());
            version.put("hash", revision.hash().hex());
            version.put("record", RecordCodec.parsed(revision.json()));
            versions.add(version);
        }
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("versions", versions);
        ctx.json(answer);
    }
}
