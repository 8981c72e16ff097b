package tenterbook.piece.condition;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Quantity;
import tenterbook.words.Joined;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * One thing seen on a piece, such as a stain.
 *
 * @param number by which it is marked on the photographs, from 1; the same thing keeps its number in every examination
 * @param what in a word, as in 'stain'; see {@link ConditionWords#what}, though any word is accepted
 * @param zone where, as in 'front'
 * @param place within the zone, as in 'beside the beak'
 * @param extent its length or longer side, as a length
 * @param across its other side, as a length
 * @param severity null where not recorded
 * @param stability likewise
 * @param standing change since the examination before; null for a thing first seen in this one
 * @param marks its places on the photographs
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

    /** @throws IllegalArgumentException if the number is not from 1 to 999 or {@code what} is empty */
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

    /** As in 'front, beside the beak'; empty where not recorded. */
    public String where() {
        if (zone.isEmpty() || place.isEmpty()) {
            return zone + place;
        }
        return zone + ", " + place;
    }

    /** As in '12 mm × 8 mm'; empty where not recorded. */
    public String size() {
        String longer = extent.recorded() ? extent.onPaper() : "";
        return across.recorded() ? (longer.isEmpty() ? "?" : longer) + " × " + across.onPaper() : longer;
    }

    /** Place, size, severity and stability, as in 'front; 12 mm; moderate, may get worse'. */
    public Written inWords() {
        Written judged = Joined.with(", ", severity == null ? "" : severity, stability == null ? "" : stability);
        return Joined.with("; ", where(), size(), judged);
    }

    public boolean gone() {
        return standing == ChangeSinceLast.GONE;
    }

    /** The same observation, to be checked again: everything is kept but how it changed. */
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
