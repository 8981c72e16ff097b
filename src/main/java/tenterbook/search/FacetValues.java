package tenterbook.search;

import com.ibm.icu.text.Normalizer2;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.lucene.analysis.icu.ICUFoldingFilter;
import org.jspecify.annotations.Nullable;
import tenterbook.label.TagStanding;
import tenterbook.label.rule.Market;
import tenterbook.piece.Category;
import tenterbook.piece.Status;

/** How facet values are written in addresses and compared. */
final class FacetValues {
    private static final Normalizer2 FOLDING = ICUFoldingFilter.NORMALIZER;

    private FacetValues() {}

    /**
     * The one form of a value that means what was typed.
     *
     * @throws IllegalArgumentException if the facet is a closed choice or a year, and this is none
     */
    static String canonical(Facet facet, String value) {
        QueryParameters.check(value.length() <= 100, facet.parameter(), "at most 100 characters", value.length());
        switch (facet) {
            case STATUS:
                return choice(facet, value, words(Status.values()));
            case CATEGORY:
                return choice(facet, value, words(Category.values()));
            case TAG:
                return choice(facet, value, tags());
            case YEAR:
                QueryParameters.check(value.matches("\\d{4}"), facet.parameter(), "a year of four digits", value);
                return value;
            default:
                return value;
        }
    }

    /** For a piece whose tag is not current, whyever. */
    static final String LACKING = "lacking";

    /** As in {@code out-of-date}. */
    static String tag(TagStanding.State state) {
        return state.toString().replace(' ', '-');
    }

    private static Stream<String> tags() {
        return Stream.of(Market.values())
                .flatMap(market -> Stream.concat(
                                Stream.of(TagStanding.State.values()).map(FacetValues::tag), Stream.of(LACKING))
                        .map(word -> word(market) + ":" + word));
    }

    private static String choice(Facet facet, String value, Stream<String> words) {
        String plain = value.toLowerCase(Locale.ROOT).replace(' ', '-');
        var known = words.collect(Collectors.toList());
        QueryParameters.check(known.contains(plain), facet.parameter(), "one of " + String.join(", ", known), value);
        return plain;
    }

    /** Of a choice that may be unrecorded, with the value that finds those. */
    private static Stream<String> words(Enum<?>[] choices) {
        return Stream.concat(Stream.of(choices).map(FacetValues::word), Stream.of(word(null)));
    }

    /** As people read it; 'not said' where nothing is recorded. */
    static String label(@Nullable Enum<?> choice) {
        return choice == null ? "not said" : choice.toString();
    }

    /** As in {@code in-stock}; {@code not-said} where nothing is recorded. */
    static String word(@Nullable Enum<?> choice) {
        return choice == null
                ? "not-said"
                : choice.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Without case, accents, macrons and width: two texts that a person would call the same. */
    static String folded(String text) {
        return FOLDING.normalize(text).strip();
    }

    /** Only letters and digits, folded: {@code V24-001} and {@code v24 001} become {@code v24001}. */
    static String squashed(String text) {
        StringBuilder plain = new StringBuilder();
        folded(text).codePoints().filter(Character::isLetterOrDigit).forEach(plain::appendCodePoint);
        return plain.toString();
    }
}
