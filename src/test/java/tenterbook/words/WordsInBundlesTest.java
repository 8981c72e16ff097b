package tenterbook.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Words shown to people stand in the bundles: no template and no class has sentences of its own. */
class WordsInBundlesTest {
    private static final Pattern WORDS_IN_ATTRIBUTES =
            Pattern.compile("\\b(?:title|placeholder|aria-label|alt|label)\\s*=\\s*\"([^\"]*)\"");
    private static final Pattern SENTENCE = Pattern.compile("\\p{Lu}?\\p{L}+,? \\p{L}[\\p{L}’'-]*,? \\p{L}+.*");
    private static final Pattern FOR_PROGRAMMERS = Pattern.compile(
            "\\b(?:LOG\\.\\w+|getLogger\\(\\w+\\.class\\)\\.\\w+|new (?:IllegalStateException|UncheckedIOException|AssertionError|NullPointerException|"
                    + "UnsupportedOperationException)|requireNonNull|\\w*\\.execute|createQuery|createUpdate|"
                    + "Pattern\\.compile|Table\\.words|but|matches|replaceAll|SuppressWarnings)\\(");
    private static final Pattern SQL =
            Pattern.compile("\\b(?:SELECT|INSERT|UPDATE|DELETE|CREATE|PRAGMA|WHERE|FROM)\\b");

    /** Read where they are typed, or by the browser; never shown. */
    private static final Set<String> ONLY_READ = Set.of("do not know", "not written down", "every 500ms", "every 2s");

    /** Codes as they stand in the ledger; an enumeration keeps the same in its {@code toString()}. */
    private static final Set<String> STORED = Set.of(
            "archive/record/ExaminationCodes.java",
            "archive/record/StoredCodes.java",
            "labelling/care/CareSymbol.java");

    @Test
    void noTemplateAndNoClassHasWordsOfItsOwn() {
        Map<String, Set<String>> left = new TreeMap<>();
        Sources.read(Sources.PAGES, ".jte").forEach((file, text) -> put(left, file, wordsOfTemplate(text)));
        Map<String, String> java = Sources.read(Sources.JAVA, ".java");
        List<String> codes = STORED.stream()
                .map(java::remove)
                .flatMap(text -> Sources.literals(text).stream())
                .toList();
        java.forEach((file, text) -> put(left, file, wordsOfJava(text, codes)));
        assertThat(left).as("words that belong into a bundle under words/").isEmpty();
    }

    private static void put(Map<String, Set<String>> left, String place, Set<String> words) {
        if (!words.isEmpty()) {
            left.computeIfAbsent(place, each -> new TreeSet<>()).addAll(words);
        }
    }

    static Set<String> wordsOfTemplate(String template) {
        Set<String> words = new TreeSet<>();
        String plain = withoutExpressions(
                template.replaceAll("(?s)<%--.*?--%>", " ").replaceAll("(?m)^@(?:import|param).*$", " "));
        WORDS_IN_ATTRIBUTES
                .matcher(plain)
                .results()
                .map(found -> found.group(1))
                .forEach(text -> add(words, text));
        for (String text : plain.replaceAll("(?s)<(?:style|svg).*?</(?:style|svg)>", " ")
                .replaceAll("(?s)<[^>]*>", "\n")
                .split("\n")) {
            add(words, text);
        }
        return words;
    }

    private static void add(Set<String> words, String text) {
        if (Pattern.compile("\\p{L}{2,}")
                        .matcher(text.replace("Tenterbook", ""))
                        .find()
                && !ONLY_READ.contains(text)) {
            words.add(text.strip());
        }
    }

    /** What is left of a template without its Java; texts within the Java stay where they are more than one word. */
    private static String withoutExpressions(String template) {
        StringBuilder plain = new StringBuilder();
        Matcher java = Pattern.compile("\\$\\{|!\\{|@(?:if|elseif|for|template[\\w.]*)\\(|@(?:else|endif|endfor)|`\\)?")
                .matcher(template);
        int done = 0;
        while (java.find(done)) {
            plain.append(template, done, java.start());
            done = java.end();
            boolean opens = java.group().endsWith("{") || java.group().endsWith("(");
            if (opens) {
                int from = done;
                done = end(template, done);
                String inside = Sources.withoutComments(template.substring(from, done));
                for (String text : Sources.literals(inside)) {
                    if (text.matches("(?s).*\\p{L}{2,}.* .*\\p{L}.*|\\p{Lu}\\p{Ll}.*")) {
                        plain.append('\n').append(text).append('\n');
                    }
                }
                if (done < template.length() && template.charAt(done) != '`') {
                    done++;
                }
            }
        }
        return plain.append(template.substring(done)).toString();
    }

    /** Behind the Java that begins here, or where the markup begins that is passed to a template. */
    private static int end(String template, int from) {
        int depth = 0;
        for (int i = from; i < template.length(); i++) {
            char c = template.charAt(i);
            if (c == '"' || c == '\'') {
                int close = i + 1;
                while (template.charAt(close) != c) {
                    close += template.charAt(close) == '\\' ? 2 : 1;
                }
                i = close;
            } else if (c == '@' && template.startsWith("@`", i)) {
                return i + 1;
            } else if (c == '(' || c == '{') {
                depth++;
            } else if ((c == ')' || c == '}') && depth-- == 0) {
                return i;
            }
        }
        return template.length();
    }

    static Set<String> wordsOfJava(String java, List<String> codes) {
        String plain = Sources.withoutComments(java);
        StringBuilder shown = new StringBuilder(plain);
        Matcher call = FOR_PROGRAMMERS.matcher(plain);
        while (call.find()) {
            int end = call.end()
                    + String.join(",", Sources.arguments(plain, call.end())).length();
            for (int i = call.end(); i < end; i++) {
                shown.setCharAt(i, ' ');
            }
        }
        return Sources.literals(shown.toString()).stream()
                .filter(text -> SENTENCE.matcher(text).find()
                        && !SQL.matcher(text).find()
                        && !ONLY_READ.contains(text)
                        && !codes.contains(text))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void wordsAreSeenWhereverTheyStand() {
        assertThat(wordsOfTemplate("@param Page page\n<p class=\"about\">Found</p>"))
                .containsExactly("Found");
        assertThat(wordsOfTemplate("<input placeholder=\"a title\" value=\"${form.value(\"x\")}\">"))
                .containsExactly("a title");
        assertThat(wordsOfTemplate("<td>${x ? \"not judged\" : w(\"piece.yes\")}</td>"))
                .containsExactly("not judged");
        assertThat(wordsOfTemplate("@template.part.typed(form = f, label = \"Left, %\")"))
                .containsExactly("Left, %");
        assertThat(wordsOfTemplate("@template.part.layout(page = page, content = @`<p>${w(\"a.b\")}</p>`)"))
                .isEmpty();
        assertThat(wordsOfJava("throw new IllegalArgumentException(\"A price is not negative\");", List.of()))
                .hasSize(1);
        assertThat(wordsOfJava("LOG.info(\"A price is not negative\"); // A price is not negative", List.of()))
                .isEmpty();
    }
}
