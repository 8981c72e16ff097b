package tenterbook.scenario;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the server sent.
 *
 * @param headers by name in lower case
 */
record Answer(int status, Map<String, List<String>> headers, byte[] body) {
    String text() {
        return new String(body, StandardCharsets.UTF_8);
    }

    String header(String name) {
        List<String> values = headers.get(name.toLowerCase(java.util.Locale.ROOT));
        return values == null ? "" : values.get(0);
    }

    /** Where a redirect leads, as a path. */
    String location() {
        return header("Location").replaceFirst("^https?://[^/]+", "");
    }

    JsonNode json() {
        try {
            return new ObjectMapper().readTree(body);
        } catch (IOException e) {
            throw new AssertionError("No JSON: " + text(), e);
        }
    }

    /** The text of the page without its markup, with character references read. */
    String words() {
        return unescaped(text().replaceAll("(?s)<(script|style).*?</\\1>", "").replaceAll("<[^>]*>", " "))
                .replaceAll("\\s+", " ");
    }

    /** What an input or textarea of the page holds. */
    String field(String name) {
        Matcher input = Pattern.compile("<input\\b(?:[^>\"]|\"[^\"]*\")*?\\bname=\"" + Pattern.quote(name)
                        + "\"(?:[^>\"]|\"[^\"]*\")*>")
                .matcher(text());
        if (input.find()) {
            Matcher value = Pattern.compile("\\bvalue=\"([^\"]*)\"").matcher(input.group());
            return value.find() ? unescaped(value.group(1)) : "";
        }
        Matcher area = Pattern.compile(
                        "(?s)<textarea[^>]*\\bname=\"" + Pattern.quote(name) + "\"[^>]*>(.*?)</textarea>")
                .matcher(text());
        if (area.find()) {
            return unescaped(area.group(1));
        }
        Matcher select = Pattern.compile("(?s)<select[^>]*\\bname=\"" + Pattern.quote(name) + "\"[^>]*>(.*?)</select>")
                .matcher(text());
        if (select.find()) {
            Matcher option = Pattern.compile("<option value=\"([^\"]*)\"[^>]*\\bselected")
                    .matcher(select.group(1));
            return option.find() ? unescaped(option.group(1)) : "";
        }
        throw new AssertionError("The page has no field “" + name + "”: " + text());
    }

    private static String unescaped(String html) {
        return html.replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&#34;", "\"")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&");
    }
}
