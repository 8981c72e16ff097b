package tenterbook.words;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A text from a message bundle with its arguments, to be written in any language.
 *
 * @param key bundle, dot, key within it: {@code pieces.found} is the entry {@code found} of {@code words/pieces.properties}
 * @param args values by name; a {@link Written} value is written in the language of the message
 */
public record Message(String key, Map<String, Object> args) implements Written {
    public Message {
        if (key.indexOf('.') < 1) {
            throw new IllegalStateException("A message is named by its bundle and its key, as in pieces.found: " + key);
        }
        args = Map.copyOf(args);
    }

    /** @param namesAndValues each argument's name, followed by its value */
    public static Message of(String key, Object... namesAndValues) {
        if (namesAndValues.length % 2 != 0) {
            throw new IllegalStateException("Each argument of " + key + " needs a name and a value");
        }
        Map<String, Object> args = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            if (namesAndValues[i + 1] == null) {
                throw new IllegalStateException("Argument " + namesAndValues[i] + " of " + key + " is null");
            }
            args.put((String) namesAndValues[i], namesAndValues[i + 1]);
        }
        return new Message(key, args);
    }

    /** Whether the bundle has the key. */
    public static boolean exists(String key) {
        return Bundles.has(key);
    }

    /** All keys of a bundle that begin so, with the bundle's name. */
    public static List<String> keys(String beginning) {
        return Bundles.keys(beginning);
    }

    /** @throws java.util.MissingResourceException if no bundle has the key */
    @Override
    public String in(Conventions conventions) {
        return Bundles.write(this, conventions);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
