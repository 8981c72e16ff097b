package tenterbook.web.clamping;

import java.util.ArrayList;
import java.util.List;
import tenterbook.web.clamping.HolePlan.Hole;
import tenterbook.web.clamping.HolePlan.Label;

/**
 * Writes the name of each hole beside it, clear of the other holes and names: nearest first, to the right, left, above and below, then
 * slanting. Where holes lie too close for that a name stands further off.
 */
final class HoleLabels {
    private static final double SLANT = Math.sqrt(0.5);
    private static final double[][] WAYS = {
        {1, 0}, {-1, 0}, {0, -1}, {0, 1}, {SLANT, -SLANT}, {-SLANT, -SLANT}, {SLANT, SLANT}, {-SLANT, SLANT}
    };

    /** From the edge of the hole to the name, in units of the plan; a line leads to all but the nearest. */
    private static final double[] GAPS = {0.6, 3, 6, 9, 13, 17};

    /** Width of a figure of the typeface beside its height, rounded up. */
    private static final double FIGURE = 0.58;

    /** A rectangle of the plan. */
    private record Box(double left, double top, double right, double bottom) {
        static Box around(double across, double down, double halfWide, double halfHigh) {
            return new Box(across - halfWide, down - halfHigh, across + halfWide, down + halfHigh);
        }

        boolean meets(Box other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }
    }

    private final HolePlan plan;
    private final List<Box> taken = new ArrayList<>();

    HoleLabels(HolePlan plan) {
        this.plan = plan;
        for (Hole hole : plan.holes()) {
            taken.add(Box.around(hole.across(), hole.down(), plan.radius(), plan.radius()));
        }
    }

    List<Label> placed() {
        return plan.holes().stream().map(this::place).toList();
    }

    private Label place(Hole hole) {
        double halfWide = plan.letters() * FIGURE * Math.max(1, hole.name().length()) / 2;
        double halfHigh = plan.letters() * 0.4;
        Box best = null;
        long fewest = Long.MAX_VALUE;
        String line = "";
        for (double gap : GAPS) {
            for (double[] way : WAYS) {
                double far = plan.radius() + gap * plan.unit();
                Box box = Box.around(
                        hole.across() + way[0] * (far + halfWide),
                        hole.down() + way[1] * (far + halfHigh),
                        halfWide,
                        halfHigh);
                long met = taken.stream().filter(box::meets).count();
                if (inside(box) && met < fewest) {
                    best = box;
                    fewest = met;
                    double end = far - plan.unit() * 0.5;
                    line = gap == GAPS[0]
                            ? ""
                            : "M%s %sl%s %s".formatted(hole.across(), hole.down(), way[0] * end, way[1] * end);
                }
            }
        }
        if (best == null) { // a hole typed outside its board
            best = Box.around(hole.across(), hole.down(), halfWide, halfHigh);
        }
        taken.add(best);
        return new Label(hole, (best.left + best.right) / 2, (best.top + best.bottom) / 2, line);
    }

    private boolean inside(Box box) {
        return box.left >= 0 && box.top >= 0 && box.right <= plan.across() && box.bottom <= plan.down();
    }
}
