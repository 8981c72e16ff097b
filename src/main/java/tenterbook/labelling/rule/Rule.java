package tenterbook.labelling.rule;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A rule as this program has it: a row of {@code /label/rules.csv}, where the columns are explained.
 *
 * @param id its name within the market
 * @param when where it asks of itself
 * @param value the figures it works with, apart by |; may be empty
 * @param asks its question to the maker; may be empty
 * @param says the requirement, in plain words
 * @param citation its source
 * @param passage the words that were read there; empty where none were
 * @param status {@code read}, {@code read second hand} or {@code from memory: verify}
 */
@JsonIgnoreProperties(
        value = {"when", "value", "asks"},
        allowSetters = true)
public record Rule(
        String id,
        String when,
        String value,
        String asks,
        String says,
        String citation,
        String passage,
        String status) {
    /** Words looked for, by {@code when}; compiled once, since the search index asks for every piece. */
    private static final Map<String, Pattern> WORDS = new ConcurrentHashMap<>();

    /** What stands beside a rule that nobody compared with its source. */
    public static final String FROM_MEMORY = "from memory: verify";

    /** The values apart. */
    public List<String> values() {
        return Arrays.stream(value.split("\\|")).filter(v -> !v.isEmpty()).toList();
    }

    /** The figure at this place of its values. */
    public double figure(int place) {
        return Double.parseDouble(values().get(place));
    }

    /**
     * Its question where a text has one of the words it looks for at this place; empty where it asks nothing there.
     *
     * @param plain the text, as {@link #plain} makes it
     */
    public Optional<Question> askedAt(String place, String plain) {
        if (asks.isEmpty() || !when.startsWith(place + ":")) {
            return Optional.empty();
        }
        Matcher found = WORDS.computeIfAbsent(when, Rule::words).matcher(plain);
        return found.find() ? Optional.of(asked(found.group())) : Optional.empty();
    }

    private static Pattern words(String when) {
        return Pattern.compile(
                Arrays.stream(when.substring(when.indexOf(':') + 1).split("\\|"))
                        .map(Rule::plain)
                        .collect(Collectors.joining("|", "(?<!\\S)(?:", ")(?!\\S)")));
    }

    /** Its question about what was found. */
    public Question asked(String found) {
        return new Question(new TableText(asks.replace("{found}", found)), this);
    }

    /** Letters in lower case, with one space between words. */
    static String plain(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}]+", " ").strip();
    }
}
