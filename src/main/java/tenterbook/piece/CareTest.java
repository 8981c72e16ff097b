package tenterbook.piece;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.NumberWords;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Worded;

/**
 * A test of washing, rubbing, light or water that was made on the piece or on a strip dyed with it. Care words are printed from
 * these alone.
 *
 * @param kind what was tested
 * @param method the maker's own words or a standard's number
 * @param temperature of the water, for a wash test
 * @param result what was seen
 * @param passed whether the maker accepts the result; null where not judged
 * @param standard the published method, or the maker's own; null where not recorded
 * @param grade on the grey scale, the worst one given for change or for staining, 1 to 5 in half steps; null where not graded
 * @param specimen what it was made on; null where not recorded
 */
public record CareTest(
        Kind kind,
        PartialDate when,
        String method,
        Quantity temperature,
        String result,
        @Nullable Boolean passed,
        @Nullable TestStandard standard,
        @Nullable Double grade,
        @Nullable Specimen specimen) {
    public enum Kind implements Worded {
        HAND_WASH("hand wash"),
        MACHINE_WASH("machine wash"),
        CHLORINE_BLEACH("chlorine bleach"),
        OTHER_BLEACH("non-chlorine bleach"),
        TUMBLE_DRY("tumble dry"),
        LINE_DRY("line dry"),
        FLAT_DRY("flat dry"),
        DRY_CLEAN("dry clean"),
        IRON("iron"),
        RUB("rub"),
        WATER("water"),
        LIGHT("light"),
        OTHER("other");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        @Override
        public Message word() {
            return Message.of("piece.care-test." + word.replace(' ', '-'));
        }

        @Override
        public String toString() {
            return word;
        }
    }

    public CareTest {
        if (kind == null) {
            throw Refusal.of("piece.test-without-kind");
        }
        when = when == null ? PartialDate.UNRECORDED : when;
        method = method == null ? "" : method.strip();
        temperature = temperature == null ? Quantity.UNRECORDED : temperature;
        result = result == null ? "" : result.strip();
        if (grade != null && !(grade >= 1 && grade <= 5 && grade * 2 == Math.rint(grade * 2))) {
            throw Refusal.of("piece.grade-range", "found", NumberWords.plain(grade));
        }
    }

    /** A test without standard, grade and specimen. */
    public CareTest(
            Kind kind, PartialDate when, String method, Quantity temperature, String result, @Nullable Boolean passed) {
        this(kind, when, method, temperature, result, passed, null, null, null);
    }

    /** The standard as recorded, else as named in the method's words; empty where neither is known. */
    public Optional<TestStandard> followed() {
        return standard != null ? Optional.of(standard) : TestStandard.namedIn(method);
    }

    /**
     * Reads '4', '4-5' or '4.5'.
     *
     * @throws IllegalArgumentException if not a grade of the grey scale
     */
    public static double readGrade(String text) {
        String plain = text.strip().replace('–', '-').replace(',', '.');
        if (plain.matches("[1-4] ?[-/] ?[2-5]") && plain.charAt(plain.length() - 1) == plain.charAt(0) + 1) {
            return plain.charAt(0) - '0' + 0.5;
        }
        if (plain.matches("[1-5](\\.0)?|[1-4]\\.5")) {
            return Double.parseDouble(plain);
        }
        throw Refusal.of("piece.grade-unreadable", "entered", text);
    }

    /** As in '4' or '4-5'; empty where not graded. */
    public String gradeWords() {
        return grade == null ? "" : gradeWords(grade);
    }

    /** As in '4' or '4-5'. */
    public static String gradeWords(double grade) {
        int whole = (int) Math.floor(grade);
        return grade == whole ? Integer.toString(whole) : whole + "-" + (whole + 1);
    }
}
