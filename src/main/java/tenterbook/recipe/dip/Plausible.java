package tenterbook.recipe.dip;

import java.util.function.ToDoubleFunction;
import tenterbook.colour.space.Interval;

/** The curves compatible with the points, as 95 % intervals of any figure of a curve. */
interface Plausible {
    Interval range(ToDoubleFunction<DipCurve> figure);

    /** Whether a straight line is among them, so that the limit has no upper bound. */
    boolean endless();
}
