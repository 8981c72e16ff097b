package tenterbook.web.found;

import static tenterbook.web.page.Words.w;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.web.Site;
import tenterbook.web.form.TypedNumber;
import tenterbook.web.page.Html;

/** Pieces that were ticked among the results, side by side. Two states of one piece are compared by {@code /compare}. */
public final class ComparePages {
    private final Site site;

    public ComparePages(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/compare/pieces", this::compare);
    }

    private void compare(Context ctx) {
        Set<String> numbers = new LinkedHashSet<>();
        List<String> unknown = new ArrayList<>();
        TypedNumber pieces = new TypedNumber(site.archive());
        for (String typed : typed(ctx)) {
            pieces.saved(typed)
                    .ifPresentOrElse(each -> numbers.add(each.record().number().value()), () -> unknown.add(typed));
        }
        List<String> problems = new ArrayList<>();
        if (!unknown.isEmpty()) {
            problems.add(w("found.compared.unknown", "numbers", String.join(", ", unknown)));
        }
        if (numbers.size() > ComparedPieces.MOST) {
            problems.add(w("found.compared.too-many", "found", numbers.size(), "most", ComparedPieces.MOST));
        }
        if (numbers.size() < 2) {
            problems.add(w("found.compared.too-few"));
        }
        List<Subject> subjects = numbers.size() < 2
                ? List.of()
                : new Subjects(site)
                        .of(numbers.stream().limit(ComparedPieces.MOST).toList(), ComparedPieces.columns());
        Map<String, Object> values = new HashMap<>();
        values.put("page", site.page(ctx, w("found.compared.title"), "pieces"));
        values.put("typed", String.join(", ", numbers.isEmpty() ? unknown : numbers));
        values.put("problems", problems);
        values.put("compared", subjects.size() < 2 ? null : ComparedPieces.of(subjects));
        Html.show(ctx, "compare-pieces", values);
    }

    private static List<String> typed(Context ctx) {
        return ctx.queryParams("pieces").stream()
                .flatMap(each -> Arrays.stream(each.split("[,;\\s]+")))
                .filter(each -> !each.isBlank())
                .toList();
    }
}
