package tenterbook.web.record;

import static tenterbook.web.page.Words.w;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.LinkedHashMap;
import java.util.Map;
import tenterbook.archive.field.InputRefused;
import tenterbook.ledger.Conflict;
import tenterbook.web.Site;
import tenterbook.web.page.Words;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The records of every kind over HTTP. */
public final class RecordApis {
    private RecordApis() {}

    public static void routes(RoutesConfig routes, Site site) {
        for (RecordPath<?> path : RecordPath.ALL) {
            new RecordApi<>(site, path).routes(routes);
        }
    }

    /** Answers to an input with everything that is wrong in it, and to a change without a version. */
    public static void failures(RoutesConfig routes) {
        routes.exception(InputRefused.class, (e, ctx) -> refuse(ctx, 400, Words.sentence(e), e.problems()));
        routes.exception(RecordInput.MissingVersion.class, (e, ctx) -> refuse(ctx, 428, Words.sentence(e), Map.of()));
    }

    /** Why a change was refused that was not made from the newest version, and what a program does next. */
    public static String sentence(Conflict e, Context ctx) {
        if (e.expected() == 0 && ctx.method() == HandlerType.POST) {
            return Words.sentence(e);
        }
        boolean never = e.expected() == 0 || e.expected() > e.found();
        return w(
                never ? "api.conflict.never" : "api.conflict.saved",
                "kind",
                Message.of("kind." + e.key().kind()),
                "id",
                e.key().id(),
                "found",
                e.found(),
                "expected",
                e.expected());
    }

    private static void refuse(Context ctx, int status, String sentence, Map<String, Written> problems) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("error", sentence);
        if (!problems.isEmpty()) {
            // As a tree of JSON, which is written whole: the name of the field is empty where the whole body is meant.
            ArrayNode list = JsonNodeFactory.instance.arrayNode();
            problems.forEach(
                    (field, problem) -> list.addObject().put("field", field).put("problem", problem.inEnglish()));
            answer.put("problems", list);
        }
        ctx.status(status);
        ctx.json(answer);
    }
}
