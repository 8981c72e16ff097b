package tenterbook.colour.compare;

import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.hipparchus.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/** A candidate alignment of two square planes of equal side, in parts of that side and so independent of resolution. */
record Placing(double dx, double dy, double turn, double logScale, double correlation) {
    /** Least share of the earlier picture in view. */
    static final double LEAST_OVERLAP = 0.4;

    private static final int TRIALS = 220;

    static Placing tried(Plane one, Plane other, double dx, double dy, double turn, double logScale) {
        Placing bare = new Placing(dx, dy, turn, logScale, 0);
        Likeness likeness = bare.likeness(one, other);
        double correlation = likeness.overlap() < LEAST_OVERLAP ? -1 : likeness.correlation();
        return new Placing(dx, dy, turn, logScale, correlation);
    }

    Likeness likeness(Plane one, Plane other) {
        return Likeness.of(one, other, on(one.width()));
    }

    Alignment on(int side) {
        return on(side, side, side, side, side, side);
    }

    /** As an alignment of the original pictures, each of which was scaled to a longer side of {@code 1}. */
    Alignment on(double long1, double long2, int width1, int height1, int width2, int height2) {
        return new Alignment(
                Math.exp(logScale) * long2 / long1,
                Math.toDegrees(turn),
                dx * long2,
                dy * long2,
                correlation,
                (width1 - 1) / 2.0,
                (height1 - 1) / 2.0,
                (width2 - 1) / 2.0,
                (height2 - 1) / 2.0);
    }

    /** A local optimum near this one (Nelder and Mead). */
    Placing settled(Plane one, Plane other, double step) {
        double[] best = new SimplexOptimizer(
                        (round, before, now) -> round >= TRIALS || Math.abs(before.getValue() - now.getValue()) < 1e-7)
                .optimize(
                        new MaxEval(20 * TRIALS),
                        new ObjectiveFunction(p -> -tried(one, other, p[0], p[1], p[2], p[3]).correlation),
                        GoalType.MINIMIZE,
                        new InitialGuess(new double[] {dx, dy, turn, logScale}),
                        new NelderMeadSimplex(new double[] {step, step, 2 * step, 2 * step}))
                .getPoint();
        return tried(one, other, best[0], best[1], best[2], best[3]);
    }

    /** Greatest distance between the corners of two placings, in parts of the side. */
    double apart(Placing other) {
        Alignment mine = on(2);
        Alignment its = other.on(2);
        double most = 0;
        for (int corner = 0; corner < 4; corner++) {
            double x = corner & 1;
            double y = corner >> 1;
            most = Math.max(most, Math.hypot(mine.x(x, y) - its.x(x, y), mine.y(x, y) - its.y(x, y)) / 2);
        }
        return most;
    }
}
