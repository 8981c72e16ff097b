package tenterbook.piece.condition;

import java.util.Collection;
import java.util.List;

/** The next examination of a piece begins with all observations of the last one, to be checked again. */
public final class NextExamination {
    private NextExamination() {}

    /** The observations to check again, in order, without those that were gone. */
    public static List<Observation> toBeChecked(Examination last) {
        return last.present().stream().map(Observation::toBeChecked).toList();
    }

    /**
     * The number of the next new observation, greater than any in {@code all} examinations of the piece: a number is never used
     * again, even where the first thing is gone.
     */
    public static int number(Collection<Examination> all) {
        return 1 + all.stream().mapToInt(Examination::greatestNumber).max().orElse(0);
    }
}
