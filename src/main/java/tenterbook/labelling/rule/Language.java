package tenterbook.labelling.rule;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A language that a market's labels may need besides English, in which the maker enters the words.
 *
 * @param tag RFC 5646, as in {@code fr-CA}
 * @param name in English
 */
public record Language(String tag, String name) {
    /** How a market uses the other language. */
    enum Use {
        /** English stands alone. */
        NONE,
        /** Each name in both, as in 'Cotton/Coton'; without the other there is no label. */
        JOINED,
        /** The other language alone; without it there is no label. */
        INSTEAD,
        /** A line of its own below the English one, where the maker entered every word of it. */
        BESIDE
    }

    /** Every language that any market's labels may need, by its English name. */
    public static List<Language> all() {
        Map<String, Language> byName = new TreeMap<>();
        Arrays.stream(Market.values())
                .flatMap(market -> market.rules().otherLanguages().stream())
                .forEach(language -> byName.putIfAbsent(language.name, language));
        return List.copyOf(byName.values());
    }

    /** What a name in another language may stand for, in English: the fibres, and the phrases that labels need. */
    public static List<String> terms() {
        Stream<String> phrases = Stream.concat(
                Stream.of(OtherNames.OTHER_FIBRE),
                Arrays.stream(Market.values())
                        .map(market -> market.rules().animalPhrase())
                        .filter(phrase -> !phrase.isEmpty()));
        return Stream.concat(FibreNames.all().stream().map(FibreNames.Fibre::fibre), phrases)
                .distinct()
                .toList();
    }

    /** Whether words entered under {@code other} serve: the same tag, or the language without its country. */
    boolean servedBy(String other) {
        return tag.equalsIgnoreCase(other) || tag.replaceFirst("-.*", "").equalsIgnoreCase(other);
    }
}
