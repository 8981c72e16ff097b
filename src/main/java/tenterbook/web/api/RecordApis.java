package tenterbook.web.api;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.archive.field.InputRefused;
import tenterbook.web.Site;
import tenterbook.web.Words;
import tenterbook.words.Written;

/** The records of every kind over HTTP. */
public final class RecordApis {
    private RecordApis() {}

    public static void routes(RoutesConfig routes, Site site) {
        for (RecordPath<?> path : RecordPath.ALL) {
            new RecordApi<>(site, path).routes(routes);
        }
    }

    /** What was wrong with an input, all of it, and a change to which no version was named. */
    public static void failures(RoutesConfig routes) {
        routes.exception(InputRefused.class, (e, ctx) -> refuse(ctx, 400, Words.sentence(e), e.problems()));
        routes.exception(RecordApi.MissingVersion.class, (e, ctx) -> refuse(ctx, 428, Words.sentence(e), Map.of()));
    }

    private static void refuse(Context ctx, int status, String sentence, Map<String, Written> problems) {
        Map<String, Object> answer = new LinkedHashMap<>();
        answer.put("error", sentence);
        if (!problems.isEmpty()) {
            List<Map<String, String>> list = new ArrayList<>();
            problems.forEach((field, problem) -> list.add(Map.of("field", field, "problem", problem.inEnglish())));
            answer.put("problems", list);
        }
        ctx.status(status);
        ctx.json(answer);
    }
}
