package tenterbook.web.page;

import gg.jte.Content;
import gg.jte.TemplateOutput;
import gg.jte.html.HtmlTemplateOutput;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A text with markup in its pattern, so that a translator can move a link within a sentence: {@code <b>}, {@code <i>} and
 * {@code <code>} stand for themselves, and any other, as {@code <edit>…</edit>}, is a link to the address in the argument
 * of that name. Markup in the value of an argument is text and is escaped.
 */
record MarkedText(Message message, Conventions conventions) implements Content {
    private static final Set<String> EMPHASIS = Set.of("b", "i", "code");
    private static final Pattern TAG = Pattern.compile("<(/?)([a-z][A-Za-z]*)>");

    /** Stands for '<' in a value while the pattern's own tags are found; private use, so in no text of ours. */
    private static final char ESCAPED = '\uE000';

    @Override
    public void writeTo(TemplateOutput output) {
        HtmlTemplateOutput html = (HtmlTemplateOutput) output;
        Map<String, Object> values = new LinkedHashMap<>();
        message.args().forEach((name, value) -> values.put(name, escaped(value)));
        String text = new Message(message.key(), values).in(conventions);
        Matcher tag = TAG.matcher(text);
        int done = 0;
        while (tag.find()) {
            text(html, text.substring(done, tag.start()));
            done = tag.end();
            boolean closing = !tag.group(1).isEmpty();
            if (EMPHASIS.contains(tag.group(2))) {
                html.writeContent(tag.group());
            } else if (closing) {
                html.writeContent("</a>");
            } else {
                html.writeContent("<a href=\"");
                html.setContext("a", "href");
                html.writeUserContent(address(tag.group(2)));
                html.writeContent("\">");
            }
        }
        text(html, text.substring(done));
    }

    private Object escaped(Object value) {
        if (value instanceof Number) {
            return value;
        }
        String text = value instanceof Written written ? written.in(conventions) : value.toString();
        return text.replace('<', ESCAPED);
    }

    private static void text(HtmlTemplateOutput html, String text) {
        html.setContext("p", null);
        html.writeUserContent(text.replace(ESCAPED, '<'));
    }

    private String address(String name) {
        Object address = message.args().get(name);
        if (address == null) {
            throw new IllegalStateException(
                    "Message %s has a link <%s> without an address".formatted(message.key(), name));
        }
        return address.toString();
    }
}
