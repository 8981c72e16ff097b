package tenterbook.web.exchange;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import tenterbook.exchange.sheet.SheetExport;
import tenterbook.exchange.sheet.SheetKind;
import tenterbook.exchange.sheet.file.SheetWriter;
import tenterbook.web.Site;
import tenterbook.web.page.NotFound;
import tenterbook.web.page.Words;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** Templates to fill in, and exports with the same columns. What is about people or money leaves only where that is asked for. */
public final class SheetDownloads {
    private final Site site;

    public SheetDownloads(Site site) {
        this.site = site;
    }

    public void routes(RoutesConfig routes) {
        routes.get("/sheets/{kind}.csv", ctx -> csv(ctx, false));
        routes.get("/sheets/template/{kind}.csv", ctx -> csv(ctx, true));
        routes.get("/sheets.xlsx", ctx -> xlsx(ctx, false));
        routes.get("/sheets/template.xlsx", ctx -> xlsx(ctx, true));
    }

    private SheetWriter.Rows rows(SheetExport export, boolean template) {
        Conventions reader = Words.conventions();
        return row -> {
            row.accept(export.headings(reader));
            if (!template) {
                export.rows(site.archive(), row);
            }
        };
    }

    private static SheetExport export(Context ctx, SheetKind kind, boolean template) {
        return new SheetExport(kind, template || "yes".equals(ctx.queryParam("private")));
    }

    private void csv(Context ctx, boolean template) throws IOException {
        String word = ctx.pathParam("kind");
        SheetKind kind = SheetKind.of(word).orElseThrow(() -> new NotFound(Message.of("import.not-there", "id", word)));
        SheetExport export = export(ctx, kind, template);
        if (!export.possible()) {
            throw Refusal.of("import.only-private", "kind", kind);
        }
        head(ctx, "text/csv; charset=utf-8", kind + ".csv");
        SheetWriter.csv(ctx.outputStream(), rows(export, template));
    }

    private void xlsx(Context ctx, boolean template) throws IOException {
        Map<String, SheetWriter.Rows> sheets = new LinkedHashMap<>();
        for (SheetKind kind : SheetKind.values()) {
            SheetExport export = export(ctx, kind, template);
            if (export.possible()) {
                sheets.put(Words.w(kind), rows(export, template));
            }
        }
        head(ctx, "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "tenterbook.xlsx");
        SheetWriter.xlsx(ctx.outputStream(), sheets);
    }

    private static void head(Context ctx, String type, String name) {
        ctx.contentType(type);
        ctx.header("Cache-Control", "no-store");
        ctx.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
    }
}
