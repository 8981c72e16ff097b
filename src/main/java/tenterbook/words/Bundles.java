package tenterbook.words;

import com.ibm.icu.text.MessageFormat;
import com.ibm.icu.text.MessagePattern;
import com.ibm.icu.text.MessagePattern.ArgType;
import com.ibm.icu.text.MessagePattern.Part;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import org.jspecify.annotations.Nullable;

/** Patterns from the bundles, parsed once, and filled in. */
final class Bundles {
    private static final ResourceBundle.Control ENGLISH_WHERE_MISSING =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    /** Behind the name of an argument where its text is meant, not its number. */
    private static final String AS_TEXT = "_";

    private static final java.util.regex.Pattern ARGUMENT =
            java.util.regex.Pattern.compile("\\{([A-Za-z][A-Za-z0-9]*)\\}");

    private static final java.util.regex.Pattern NOT_PLAIN = java.util.regex.Pattern.compile("[{}]|'$");

    private static final Map<String, Pattern> PATTERNS = new ConcurrentHashMap<>();

    private Bundles() {}

    /**
     * Of one entry. ICU's formats are slow to begin with, so only what chooses a form has one.
     *
     * @param parts texts in turn with names of arguments, a text first; null where there is a format
     */
    private record Pattern(
            @Nullable MessageFormat format, @Nullable List<String> parts) {}

    static String write(Message message, Conventions conventions) {
        Pattern pattern = PATTERNS.computeIfAbsent(
                conventions.language().toLanguageTag() + " " + message.key(),
                name -> read(message.key(), conventions.language()));
        return pattern.parts != null
                ? joined(message, pattern.parts, conventions)
                : formatted(message, Objects.requireNonNull(pattern.format), conventions);
    }

    private static String joined(Message message, List<String> parts, Conventions conventions) {
        if (parts.size() == 1) {
            return parts.get(0);
        }
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < parts.size(); i++) {
            text.append(i % 2 == 0 ? parts.get(i) : text(argument(message, parts.get(i)), conventions));
        }
        return text.toString();
    }

    private static Object argument(Message message, String name) {
        Object value = message.args().get(name);
        if (value == null) {
            throw new IllegalStateException("Message %s needs an argument %s".formatted(message.key(), name));
        }
        return value;
    }

    private static String formatted(Message message, MessageFormat format, Conventions conventions) {
        Map<String, Object> values = new HashMap<>();
        message.args().forEach((name, value) -> {
            String text = text(value, conventions);
            values.put(name, value instanceof Number ? value : text);
            values.put(name + AS_TEXT, text);
        });
        for (String name : format.getArgumentNames()) {
            if (!values.containsKey(name)) {
                throw new IllegalStateException("Message %s needs an argument %s".formatted(message.key(), name));
            }
        }
        // A MessageFormat makes its number formats when first needed, so two threads may not use one at once.
        synchronized (format) {
            return format.format(values);
        }
    }

    static boolean has(String key) {
        return bundle(key, Locale.ROOT).containsKey(key.substring(key.indexOf('.') + 1));
    }

    static List<String> keys(String beginning) {
        String name = beginning.substring(0, beginning.indexOf('.') + 1);
        return bundle(beginning, Locale.ROOT).keySet().stream()
                .map(key -> name + key)
                .filter(key -> key.startsWith(beginning))
                .sorted()
                .toList();
    }

    private static ResourceBundle bundle(String key, Locale language) {
        return ResourceBundle.getBundle("words/" + key.substring(0, key.indexOf('.')), language, ENGLISH_WHERE_MISSING);
    }

    private static Pattern read(String key, Locale language) {
        String entry = bundle(key, language).getString(key.substring(key.indexOf('.') + 1));
        List<String> parts = parts(entry);
        return parts != null
                ? new Pattern(null, parts)
                : new Pattern(new MessageFormat(withTexts(entry), language), null);
    }

    /** Of an entry that names arguments and nothing more; null for any other, and where an apostrophe may quote a brace. */
    private static @Nullable List<String> parts(String entry) {
        if (entry.indexOf('{') < 0 && entry.indexOf('}') < 0) {
            return List.of(entry.replace("''", "'"));
        }
        List<String> parts = new ArrayList<>();
        int done = 0;
        Matcher argument = ARGUMENT.matcher(entry);
        while (argument.find()) {
            parts.add(entry.substring(done, argument.start()));
            parts.add(argument.group(1));
            done = argument.end();
        }
        parts.add(entry.substring(done));
        for (int i = 0; i < parts.size(); i += 2) {
            if (NOT_PLAIN.matcher(parts.get(i)).find()) {
                return null;
            }
            parts.set(i, parts.get(i).replace("''", "'"));
        }
        return parts;
    }

    /**
     * {@code {count}} and {@code #} stand for the text of a number, which MessageFormat would write with the language's
     * grouping marks: '1,200' can be read as two numbers.
     */
    private static String withTexts(String pattern) {
        MessagePattern parsed = new MessagePattern(pattern);
        StringBuilder written = new StringBuilder();
        Deque<String> counted = new ArrayDeque<>();
        int done = 0;
        for (int i = 0; i < parsed.countParts(); i++) {
            Part part = parsed.getPart(i);
            ArgType type = part.getArgType();
            if (part.getType() == Part.Type.ARG_START && type == ArgType.NONE) {
                int end = parsed.getPart(i + 1).getLimit();
                written.append(pattern, done, end).append(AS_TEXT);
                done = end;
            } else if (part.getType() == Part.Type.ARG_START && type.hasPluralStyle()) {
                counted.push(parsed.getSubstring(parsed.getPart(i + 1)));
            } else if (part.getType() == Part.Type.ARG_LIMIT && type.hasPluralStyle()) {
                counted.pop();
            } else if (part.getType() == Part.Type.REPLACE_NUMBER) {
                written.append(pattern, done, part.getIndex())
                        .append('{')
                        .append(counted.peek())
                        .append(AS_TEXT)
                        .append('}');
                done = part.getLimit();
            }
        }
        return written.append(pattern.substring(done)).toString();
    }

    private static String text(Object value, Conventions conventions) {
        if (value instanceof Written written) {
            return written.in(conventions);
        }
        if (value instanceof Double || value instanceof Float) {
            throw new IllegalStateException("A number with decimals is passed as it is to be written: " + value);
        }
        return value.toString();
    }
}
