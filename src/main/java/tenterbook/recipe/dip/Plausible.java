package tenterbook.recipe.dip;

import java.util.function.ToDoubleFunction;
import tenterbook.colour.space.Interval;

/** The curves that the points leave open, as 95 % intervals of whatever is asked of a curve. */
interface Plausible {
    Interval range(ToDoubleFunction<DipCurve> figure);

    /** Whether a straight line is among them: then nothing bounds the limit from above. */
    boolean endless();
}
