package tenterbook.material;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.NumberWords;
import tenterbook.words.Conventions;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * One fibre of a cloth.
 *
 * @param fibre the generic name as entered, in English, as in 'silk' or 'linen'
 * @param percent share of the fibre's weight as declared to the maker, above 0 and at most 100; null where not known
 * @param purpose purpose of a small share, as in 'stretch'; empty where not recorded
 * @param evidence what that is known from; null where not recorded
 * @param measured share found by a laboratory, in the same way; null where not measured
 */
public record FibreShare(
        String fibre,
        @Nullable Double percent,
        String purpose,
        @Nullable Evidence evidence,
        @Nullable Double measured) implements Written {
    /** Percentage points; as Reg. (EU) 1007/2011 Art. 20(3) allows in making. */
    static final int TOLERANCE = 3;

    public FibreShare(String fibre, @Nullable Double percent, String purpose) {
        this(fibre, percent, purpose, null, null);
    }

    public FibreShare {
        fibre = fibre == null ? "" : fibre.strip();
        purpose = purpose == null ? "" : purpose.strip();
        checked(percent, fibre);
        checked(measured, fibre);
    }

    private static void checked(@Nullable Double percent, String fibre) {
        if (percent != null && !(percent > 0 && percent <= 100)) {
            throw Refusal.of("material.share", "percent", NumberWords.plain(percent), "fibre", fibre);
        }
    }

    /** Whether the declared share and the measured one are both known and differ by no more than {@value #TOLERANCE} points. */
    public boolean agrees() {
        return percent != null && measured != null && Math.abs(percent - measured) <= TOLERANCE;
    }

    /** '97 % silk', or 'silk' where its share is not known. Labels follow their market's rule instead. */
    @Override
    public String in(Conventions conventions) {
        return percent == null
                ? fibre
                : NumberWords.percent(NumberWords.plain(percent)).in(conventions) + NumberWords.UNIT_SPACE + fibre;
    }
}
