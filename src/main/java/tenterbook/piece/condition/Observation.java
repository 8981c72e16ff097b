package tenterbook.piece.condition;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Quantity;
import tenterbook.words.Joined;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * One thing seen on a piece.
 *
 * @param number by which it is marked on the photographs, from 1; the same thing keeps its number in every examination
 * @param what in a word, as in 'stain'; see {@link ConditionWords#what}, though any word may stand here
 * @param zone where, as in 'front'
 * @param place closer, as in 'beside the beak'
 * @param extent its length or longer side, as a length
 * @param across its other side, as a length
 * @param severity null where not recorded
 * @param stability likewise
 * @param standing since the examination before; null for a thing first seen in this one
 * @param marks where it is to be seen on the photographs
 */
public record Observation(
        int number,
        String what,
        String zone,
        String place,
        Quantity extent,
        Quantity across,
        @Nullable Severity severity,
        @Nullable Stability stability,
        @Nullable ChangeSinceLast standing,
        String note,
        List<PhotoMark> marks) {
    private static final int MOST = 999;

    /** @throws IllegalArgumentException if it has no number from 1 to 999 or does not say what was seen */
    public Observation {
        if (number < 1 || number > MOST) {
            throw Refusal.of("condition.number", "most", MOST, "found", number);
        }
        what = what == null ? "" : what.strip();
        if (what.isEmpty()) {
            throw Refusal.of("condition.nothing-seen", "number", number);
        }
        zone = zone == null ? "" : zone.strip();
        place = place == null ? "" : place.strip();
        extent = extent == null ? Quantity.UNRECORDED : extent;
        across = across == null ? Quantity.UNRECORDED : across;
        note = note == null ? "" : note.strip();
        marks = marks == null ? List.of() : List.copyOf(marks);
    }

    /** As in 'front, beside the beak'; empty where not said. */
    public String where() {
        return zone.isEmpty() ? place : place.isEmpty() ? zone : zone + ", " + place;
    }

    /** As in '12 mm × 8 mm'; empty where not recorded. */
    public String size() {
        String longer = extent.recorded() ? extent.toString() : "";
        return across.recorded() ? (longer.isEmpty() ? "?" : longer) + " × " + across : longer;
    }

    /** Where, how large, how bad and whether it will grow, as in 'front; 12 mm; moderate, may get worse'. */
    public Written inWords() {
        Written judged = Joined.with(", ", severity == null ? "" : severity, stability == null ? "" : stability);
        return Joined.with("; ", where(), size(), judged);
    }

    public boolean gone() {
        return standing == ChangeSinceLast.GONE;
    }

    /** The same thing, to be looked for again: with all that was found of it, and nothing said of how it is now. */
    public Observation toBeChecked() {
        return new Observation(
                number,
                what,
                zone,
                place,
                extent,
                across,
                severity,
                stability,
                ChangeSinceLast.NOT_CHECKED,
                note,
                marks);
    }
}
