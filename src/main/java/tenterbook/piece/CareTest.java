package tenterbook.piece;

import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;

/**
 * A test of washing, rubbing, light or water that was really made, on the piece or on a strip dyed with it. Care words are
 * printed from these alone.
 *
 * @param kind what was tested
 * @param method the maker's own words or a standard's number
 * @param temperature of the water, for a wash test
 * @param result what was seen
 * @param passed whether the maker accepts the result; null where not judged
 */
public record CareTest(
        Kind kind, PartialDate when, String method, Quantity temperature, String result, Boolean passed) {
    /** What a care test tests. */
    public enum Kind {
        HAND_WASH("hand wash"),
        MACHINE_WASH("machine wash"),
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
        public String toString() {
            return word;
        }
    }

    public CareTest {
        kind = kind == null ? Kind.OTHER : kind;
        when = when == null ? PartialDate.UNRECORDED : when;
        method = method == null ? "" : method.strip();
        temperature = temperature == null ? Quantity.UNRECORDED : temperature;
        result = result == null ? "" : result.strip();
    }
}
