package tenterbook.words;

import static org.assertj.core.api.Assertions.assertThat;

import com.ibm.icu.text.MessageFormat;
import com.ibm.icu.text.MessagePattern;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The message bundles hold what is used, all of it and no more. */
class BundlesTest {
    private static final Pattern KEY = Pattern.compile("[a-z][a-z0-9-]*(\\.[A-Za-z0-9_-]+)+\\.?|[a-z][a-z0-9-]*\\.");
    private static final Pattern FILE_OF_THE_LEDGER = Pattern.compile("ledger\\.(?:db.*|jsonl)");
    private static final Pattern TAG = Pattern.compile("<(/?)([a-z][A-Za-z]*)>");

    /** Asked for by the names of records and fields; {@code FieldWordsTest} compares them with the descriptions. */
    private static final String FIELDS = "fields.";

    private static Map<String, String> patterns() {
        Map<String, String> patterns = new TreeMap<>();
        Sources.read(Path.of("src/main/resources/words"), ".properties").forEach((file, text) -> {
            Properties read = new Properties();
            try {
                read.load(new StringReader(text));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            String bundle = file.substring(0, file.length() - ".properties".length());
            read.forEach((key, pattern) -> patterns.put(bundle + "." + key, (String) pattern));
            assertThat(text.lines().filter(line -> line.matches("[^#\\s].*=.*")).count())
                    .as("%s says each of its keys once, on a line of its own".formatted(file))
                    .isEqualTo(read.size());
        });
        return patterns;
    }

    /** Patterns of the English bundles, which hold every key. */
    private static Map<String, String> english() {
        return patterns().entrySet().stream()
                .filter(entry -> !entry.getKey().split("\\.")[0].contains("_"))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue, (a, b) -> a, TreeMap::new));
    }

    /** Whoever takes a key hands it on as a text, so every text that begins with a bundle's name counts as a key. */
    @Test
    void everyKeyThatStandsInTheSourceIsThere() {
        Map<String, String> there = english();
        Set<String> bundles =
                there.keySet().stream().map(key -> key.split("\\.")[0]).collect(Collectors.toSet());
        Set<String> asked = Sources.all().stream()
                .flatMap(source -> Sources.literals(source).stream())
                .filter(text -> KEY.matcher(text).matches()
                        && bundles.contains(text.split("\\.")[0])
                        && !FILE_OF_THE_LEDGER.matcher(text).matches())
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(asked)
                .hasSizeGreaterThan(there.size() / 2)
                .allMatch(
                        key -> key.endsWith(".")
                                ? there.keySet().stream().anyMatch(each -> each.startsWith(key))
                                : there.containsKey(key),
                        "stands in a bundle");
    }

    @Test
    void everyMessageIsUsed() {
        Set<String> used = new TreeSet<>();
        Pattern quoted = Pattern.compile("\"(" + KEY.pattern() + ")\"");
        Sources.all().forEach(source -> quoted.matcher(source).results().forEach(key -> used.add(key.group(1))));
        used.add(FIELDS);
        List<String> prefixes = used.stream().filter(key -> key.endsWith(".")).toList();
        assertThat(english().keySet().stream()
                        .filter(key -> !used.contains(key) && prefixes.stream().noneMatch(key::startsWith)))
                .as("messages that nothing asks for")
                .isEmpty();
    }

    @Test
    void aMessageIsGivenTheArgumentsItNames() {
        Map<String, String> there = english();
        List<String> wrong = new ArrayList<>();
        for (String source : Sources.all()) {
            for (List<String> call : Sources.calls(source)) {
                String key = call.get(0).replaceAll("^\"|\"$", "");
                Set<String> given = new TreeSet<>();
                for (int i = 1; i < call.size(); i += 2) {
                    given.add(call.get(i).replaceAll("^\"|\"$", ""));
                }
                if (there.containsKey(key) && given.stream().allMatch(name -> name.matches("[A-Za-z]+"))) {
                    Set<String> named = names(there.get(key));
                    if (!named.equals(given)) {
                        wrong.add("%s names %s and is given %s".formatted(key, named, given));
                    }
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    private static Set<String> names(String pattern) {
        MessagePattern parsed = new MessagePattern(pattern);
        Set<String> names = IntStream.range(0, parsed.countParts())
                .mapToObj(parsed::getPart)
                .filter(part -> part.getType() == MessagePattern.Part.Type.ARG_NAME)
                .map(parsed::getSubstring)
                .collect(Collectors.toCollection(TreeSet::new));
        TAG.matcher(pattern)
                .results()
                .map(tag -> tag.group(2))
                .filter(tag -> !Set.of("b", "i", "code").contains(tag))
                .forEach(names::add);
        return names;
    }

    /**
     * Bundles that are still English alone; their texts are shown in English on pages of another language. The list may only become shorter:
     * a bundle that is translated is taken off it.
     */
    private static final Set<String> NOT_TRANSLATED_YET = Set.of("care", "rules");

    @Test
    void everyTranslatedBundleHasEveryKeyAndNoOther() {
        Map<String, String> patterns = patterns();
        for (Language language : Language.values()) {
            if (language == Language.ENGLISH) {
                continue;
            }
            Set<String> lacking = new TreeSet<>();
            Set<String> translated = new TreeSet<>();
            english().keySet().forEach(key -> {
                String bundle = key.substring(0, key.indexOf('.'));
                String there = bundle + "_" + language.code() + key.substring(key.indexOf('.'));
                if (patterns.containsKey(there)) {
                    translated.add(bundle);
                } else if (!NOT_TRANSLATED_YET.contains(bundle)) {
                    lacking.add(there);
                }
            });
            assertThat(lacking).as("keys without a text in " + language).isEmpty();
            assertThat(translated)
                    .as("bundles that are translated and still listed as not")
                    .doesNotContainAnyElementsOf(NOT_TRANSLATED_YET);
        }
        Map<String, String> english = english();
        assertThat(patterns.keySet())
                .allMatch(
                        key -> english.containsKey(key.replaceFirst("_[A-Za-z_]+(?=\\.)", "")), "has an English text");
    }

    /** Of {@code select} the values are codes of the program; of {@code plural} each language has its own forms, and numbers of ours. */
    @Test
    void aTranslationNamesTheSameArgumentsAndChoosesAmongTheSame() {
        Map<String, String> english = english();
        patterns().forEach((key, pattern) -> {
            String original = english.getOrDefault(key.replaceFirst("_[A-Za-z_]+(?=\\.)", ""), pattern);
            assertThat(names(pattern)).as(key).isEqualTo(names(original));
            assertThat(choices(pattern)).as(key).isEqualTo(choices(original));
        });
    }

    private static Set<String> choices(String pattern) {
        MessagePattern parsed = new MessagePattern(pattern);
        Set<String> choices = new TreeSet<>();
        Deque<String> open = new ArrayDeque<>();
        for (int i = 0; i < parsed.countParts(); i++) {
            MessagePattern.Part part = parsed.getPart(i);
            if (part.getType() == MessagePattern.Part.Type.ARG_START) {
                open.push(
                        part.getArgType() == MessagePattern.ArgType.SELECT
                                ? parsed.getSubstring(parsed.getPart(i + 1))
                                : "");
            } else if (part.getType() == MessagePattern.Part.Type.ARG_LIMIT) {
                open.pop();
            } else if (part.getType() == MessagePattern.Part.Type.ARG_SELECTOR
                    && !open.peek().isEmpty()) {
                choices.add(open.peek() + "=" + parsed.getSubstring(part));
            }
        }
        return choices;
    }

    /** ICU's own MessageFormat decides how an entry is read (apostrophes, braces), also where the program does without it. */
    @Test
    void whatIsWrittenWithoutAFormatIsWhatTheFormatWrites() {
        int compared = 0;
        for (Map.Entry<String, String> entry : english().entrySet()) {
            MessageFormat format = new MessageFormat(entry.getValue(), Locale.UK);
            if (!entry.getValue().matches("(?s).*\\{\\s*\\w+\\s*,.*")) {
                Map<String, Object> values = new TreeMap<>();
                format.getArgumentNames().forEach(name -> values.put(name, "<" + name + ">"));
                assertThat(new Message(entry.getKey(), values).inEnglish())
                        .as(entry.getKey())
                        .isEqualTo(format.format(values));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(1000);
    }

    @Test
    void markupIsClosedInTheOrderItIsOpened() {
        patterns().forEach((key, pattern) -> {
            Deque<String> open = new ArrayDeque<>();
            Matcher tag = TAG.matcher(pattern);
            while (tag.find()) {
                if (tag.group(1).isEmpty()) {
                    open.push(tag.group(2));
                } else {
                    assertThat(open.poll()).as(key).isEqualTo(tag.group(2));
                }
            }
            assertThat(open).as(key).isEmpty();
        });
    }

    /** Their keys are put together from a constant's code, which no reading of the source can follow. */
    @Test
    void everyConstantWithAWordHasOne() throws ClassNotFoundException {
        List<Class<?>> types = new ArrayList<>();
        for (Map.Entry<String, String> source :
                Sources.read(Sources.JAVA, ".java").entrySet()) {
            if (source.getValue().matches("(?s).*\\benum \\w+ implements [\\w, ]*\\bWorded\\b.*")) {
                Class<?> type = Class.forName("tenterbook."
                        + source.getKey().replaceFirst("\\.java$", "").replace('/', '.'));
                types.add(type);
                types.addAll(List.of(type.getDeclaredClasses()));
            }
        }
        for (Class<?> type : types) {
            if (type.isEnum() && Worded.class.isAssignableFrom(type)) {
                for (Object constant : type.getEnumConstants()) {
                    assertThat(((Worded) constant).inEnglish()).isNotBlank();
                }
            }
        }
    }
}
