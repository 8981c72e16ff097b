package tenterbook.web.page;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.Utf8ByteOutput;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.Map;

/** Renders the precompiled templates of {@code web/pages}; everything they write is escaped. */
public final class Html {
    private static final TemplateEngine TEMPLATES = TemplateEngine.createPrecompiled(
            null, ContentType.Html, Html.class.getClassLoader(), "tenterbook.web.pages");

    static {
        TEMPLATES.setBinaryStaticContent(false);
    }

    private Html() {}

    /**
     * @param template file name without its ending, as in {@code piece}
     * @param values the template's parameters by name
     */
    public static void show(Context ctx, String template, Map<String, ?> values) {
        Utf8ByteOutput output = new Utf8ByteOutput();
        TEMPLATES.render(template + ".jte", new HashMap<>(values), output);
        ctx.contentType("text/html; charset=utf-8");
        ctx.header("Cache-Control", "no-store");
        ctx.result(output.toByteArray());
    }
}
