package tenterbook.search.query;

import com.ibm.icu.text.Normalizer2;
import java.util.Locale;
import org.apache.lucene.analysis.icu.ICUFoldingFilter;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Message;

/** How facet values are written in addresses and compared. */
public final class FacetValues {
    private static final Message NOT_RECORDED = Message.of("search.not-recorded");
    private static final Normalizer2 FOLDING = ICUFoldingFilter.NORMALIZER;

    private FacetValues() {}

    /**
     * The one form of a value that means what was typed.
     *
     * @throws IllegalArgumentException if the facet is a closed choice or a year, and this is none
     */
    public static String canonical(Facet facet, String value) {
        QueryParameters.check(value.length() <= 100, facet.parameter(), "value", value.length());
        if (facet.equals(Facet.YEAR)) {
            QueryParameters.check(value.matches("\\d{4}"), facet.parameter(), "year", value);
        }
        if (facet.choices().isEmpty()) {
            return value;
        }
        String plain = value.toLowerCase(Locale.ROOT).replace(' ', '-');
        if (!facet.choices().contains(plain)) {
            throw QueryParameters.refusal(facet.parameter(), QueryParameters.oneOf(facet.choices()), value);
        }
        return plain;
    }

    /** As people read it; 'not recorded' where nothing is recorded. */
    public static String label(@Nullable Enum<?> choice) {
        return choice == null ? NOT_RECORDED.inEnglish() : choice.toString();
    }

    /** As in {@code in-stock}; {@code not-said} where nothing is recorded. */
    public static String word(@Nullable Enum<?> choice) {
        return choice == null
                ? "not-said"
                : choice.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Without case, accents, macrons and width: two texts that a person would call the same. */
    public static String folded(String text) {
        return FOLDING.normalize(text).strip();
    }

    /** Only letters and digits, folded: {@code V24-001} and {@code v24 001} become {@code v24001}. */
    public static String squashed(String text) {
        StringBuilder plain = new StringBuilder();
        folded(text).codePoints().filter(Character::isLetterOrDigit).forEach(plain::appendCodePoint);
        return plain.toString();
    }
}
