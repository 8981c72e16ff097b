package tenterbook.piece.condition;

import java.util.Collection;
import java.util.List;

/** How the next examination of a piece begins: with all that the last one saw, to be looked for again. */
public final class NextExamination {
    private NextExamination() {}

    /** What is to be looked for again, in order; what was gone already is left out. */
    public static List<Observation> toBeChecked(Examination last) {
        return last.present().stream().map(Observation::toBeChecked).toList();
    }

    /**
     * The number of the next new thing, greater than any in {@code all} examinations of the piece: a number is never given to
     * another thing, also where the first is long gone.
     */
    public static int number(Collection<Examination> all) {
        return 1 + all.stream().mapToInt(Examination::greatestNumber).max().orElse(0);
    }
}
