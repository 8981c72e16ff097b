package tenterbook.recipe;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tenterbook.material.LotId;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.recipe.dip.DipTally;
import tenterbook.words.Message;

/**
 * One dyeing from folding to unclamping: boards, cloth, folds and steps. Pieces are cut from what comes out.
 *
 * @param title what the maker calls it; may be empty
 * @param when the day it was clamped
 * @param boards the board states used
 * @param cuts the cloth that went in
 * @param steps in the order of the work
 * @param clamped how long the bundle stayed in the clamp
 * @param pressure how it was clamped, in words
 * @param water the water used, as in 'rain, 28 ppm'
 * @param lesson what to do otherwise next time
 * @param copiedFrom the clamping this one was started from, or null
 * @param where where and by whom it was made
 * @param materials cloth, dyes and all else bought for all its pieces together; null where not recorded
 * @param hours of work on all its pieces together, as a duration
 */
public record Clamping(
        ClampingId id,
        String title,
        PartialDate when,
        List<BoardUse> boards,
        FoldScheme fold,
        List<Cut> cuts,
        List<Step> steps,
        Quantity clamped,
        String pressure,
        String water,
        String lesson,
        String notes,
        @Nullable ClampingId copiedFrom,
        WhereDyed where,
        @Nullable Money materials,
        Quantity hours) {
    public Clamping {
        title = title == null ? "" : title.strip();
        when = when == null ? PartialDate.UNRECORDED : when;
        boards = boards == null ? List.of() : List.copyOf(boards);
        fold = fold == null ? FoldScheme.UNRECORDED : fold;
        cuts = cuts == null ? List.of() : List.copyOf(cuts);
        steps = steps == null ? List.of() : List.copyOf(steps);
        clamped = clamped == null ? Quantity.UNRECORDED : clamped;
        pressure = pressure == null ? "" : pressure.strip();
        water = water == null ? "" : water.strip();
        lesson = lesson == null ? "" : lesson.strip();
        notes = notes == null ? "" : notes.strip();
        where = where == null ? WhereDyed.UNRECORDED : where;
        hours = hours == null ? Quantity.UNRECORDED : hours;
    }

    /** The lots of all baths, in order, without repetition. */
    public Stream<LotId> lots() {
        return steps.stream()
                .flatMap(step -> step.charges().stream())
                .map(Charge::lot)
                .distinct();
    }

    /** All dips of its steps; each disagreement names its step. */
    public DipTally dips() {
        DipTally sum = DipTally.NONE;
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).dipped()) {
                sum = sum.plus(
                        steps.get(i).dips().tally().at(Message.of("recipe.dips.step", "clamping", id, "step", i + 1)));
            }
        }
        return sum;
    }
}
