package tenterbook.words;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The program's own texts, read for the tests of this room. */
final class Sources {
    static final Path JAVA = Path.of("src/main/java/tenterbook");
    static final Path PAGES = Path.of("web/pages");

    private static final Pattern COMMENT_OR_TEXT = Pattern.compile(
            "(?s)(?<text>\"\"\".*?\"\"\"|\"(?:\\\\.|[^\"\\\\\\n])*\"|'(?:\\\\.|[^'\\\\\\n])')|//[^\\n]*|/\\*.*?\\*/");
    private static final Pattern CALL =
            Pattern.compile("\\b(?:w|marked|Words\\.w|Words\\.marked|Message\\.of|Refusal\\.of|PhotoRefused\\.of)\\(");
    static final Pattern LITERAL = Pattern.compile("\"((?:\\\\.|[^\"\\\\\\n])*)\"");

    private Sources() {}

    /** Every file under a folder with an ending, by its path within it. */
    static Map<String, String> read(Path folder, String ending) {
        Map<String, String> texts = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(f -> f.toString().endsWith(ending)).toList()) {
                texts.put(folder.relativize(file).toString().replace('\\', '/'), Files.readString(file));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return texts;
    }

    /** All Java without its comments, and all templates. */
    static List<String> all() {
        List<String> all = new ArrayList<>(read(PAGES, ".jte").values());
        read(JAVA, ".java").values().forEach(text -> all.add(withoutComments(text)));
        return all;
    }

    static String withoutComments(String java) {
        return COMMENT_OR_TEXT
                .matcher(java)
                .replaceAll(found -> found.group(1) == null ? " " : Matcher.quoteReplacement(found.group(1)));
    }

    /** The arguments of every call that names a message, as written. */
    static List<List<String>> calls(String source) {
        List<List<String>> calls = new ArrayList<>();
        Matcher call = CALL.matcher(source);
        while (call.find()) {
            calls.add(arguments(source, call.end()));
        }
        return calls;
    }

    /** The arguments from behind an opening bracket to its closing one. */
    static List<String> arguments(String source, int from) {
        List<String> arguments = new ArrayList<>();
        int depth = 0;
        int start = from;
        for (int i = from; i < source.length(); i++) {
            char c = source.charAt(i);
            if (c == '"' || c == '\'') {
                i = endOfText(source, i);
            } else if (c == '(' || c == '[' || c == '{') {
                depth++;
            } else if (c == ')' || c == ']' || c == '}') {
                if (depth-- == 0) {
                    arguments.add(source.substring(start, i).strip());
                    return arguments;
                }
            } else if (c == ',' && depth == 0) {
                arguments.add(source.substring(start, i).strip());
                start = i + 1;
            }
        }
        throw new IllegalStateException(
                "No closing bracket behind " + source.substring(from, Math.min(source.length(), from + 60)));
    }

    private static int endOfText(String source, int from) {
        int i = from + 1;
        while (source.charAt(i) != source.charAt(from)) {
            i += source.charAt(i) == '\\' ? 2 : 1;
        }
        return i;
    }

    static List<String> literals(String source) {
        return LITERAL.matcher(source).results().map(found -> found.group(1)).toList();
    }
}
