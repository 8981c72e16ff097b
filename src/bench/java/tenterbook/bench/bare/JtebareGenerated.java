package tenterbook.bench.bare;

import gg.jte.html.HtmlInterceptor;
import gg.jte.html.HtmlTemplateOutput;
import java.util.List;
import java.util.Map;

/** A page as the template compiler writes it: a list of names, escaped. */
public final class JtebareGenerated {
    public static final String JTE_NAME = "bare.jte";
    public static final int[] JTE_LINE_INFO = {};

    private JtebareGenerated() {}

    public static void render(HtmlTemplateOutput output, HtmlInterceptor interceptor, List<String> names) {
        output.writeContent("<!doctype html><html lang=\"en\"><head><title>Bare</title></head><body><ul>");
        for (String name : names) {
            output.writeContent("<li>");
            output.setContext("li", null);
            output.writeUserContent(name);
            output.writeContent("</li>");
        }
        output.writeContent("</ul></body></html>");
    }

    @SuppressWarnings("unchecked") // as the template compiler does
    public static void renderMap(HtmlTemplateOutput output, HtmlInterceptor interceptor, Map<String, Object> values) {
        render(output, interceptor, (List<String>) values.get("names"));
    }
}
