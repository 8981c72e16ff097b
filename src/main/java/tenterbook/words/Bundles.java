package tenterbook.words;

import com.ibm.icu.text.MessageFormat;
import com.ibm.icu.text.MessagePattern;
import com.ibm.icu.text.MessagePattern.ArgType;
import com.ibm.icu.text.MessagePattern.Part;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;

/** Patterns from the bundles, parsed once, and filled in. */
final class Bundles {
    private static final ResourceBundle.Control ENGLISH_WHERE_MISSING =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    /** Behind the name of an argument where its text is meant, not its number. */
    private static final String AS_TEXT = "_";

    private static final Map<String, Pattern> PATTERNS = new ConcurrentHashMap<>();

    private Bundles() {}

    /** A text without arguments is kept as it is written. */
    private record Pattern(MessageFormat format, String fixed) {}

    static String write(Message message, Conventions conventions) {
        Pattern pattern = PATTERNS.computeIfAbsent(
                conventions.language().toLanguageTag() + " " + message.key(),
                name -> read(message.key(), conventions.language()));
        if (pattern.fixed != null) {
            return pattern.fixed;
        }
        Map<String, Object> values = new HashMap<>();
        message.args().forEach((name, value) -> {
            String text = text(value, conventions);
            values.put(name, value instanceof Number ? value : text);
            values.put(name + AS_TEXT, text);
        });
        for (String name : pattern.format.getArgumentNames()) {
            if (!values.containsKey(name)) {
                throw new IllegalStateException("Message %s needs an argument %s".formatted(message.key(), name));
            }
        }
        // A MessageFormat makes its number formats when first needed, so two threads may not use one at once.
        synchronized (pattern.format) {
            return pattern.format.format(values);
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
        MessageFormat format = new MessageFormat(withTexts(entry), language);
        return format.getArgumentNames().isEmpty()
                ? new Pattern(format, format.format(Map.of()))
                : new Pattern(format, null);
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
