package tenterbook.recipe.dip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.special.Erf;
import tenterbook.colour.space.Interval;
import tenterbook.measure.NumberWords;
import tenterbook.recipe.dip.DipFit.Candidate;
import tenterbook.recipe.dip.DipsNeeded.Verdict;
import tenterbook.words.Refusal;

/**
 * The dip curves that the pieces of one cloth in one vat allow, each with its probability. Immutable. Depths are K/S; intervals
 * hold nine in ten pieces.
 *
 * <p>A question for dips is answered by Bayes' rule over a grid of dips. Before the colour is known, every ratio of dips counts
 * alike from half a dip to the most dips seen; beyond, the probability falls with the square of the dips and ends at twice
 * the most seen, so that a vat that no longer gets deeper does not suggest endless dips.
 */
public final class FittedDips {
    /** On either side. By the model alone 0.05 would do; that held 92 to 93 % of the pieces left out (DipAccuracyTest). */
    private static final double TAIL = 0.06;
    /** Standard deviations from the middle of a normal distribution to its 95 % mark. */
    private static final double REACH = 1.645;

    private static final double FEWEST = 0.5;
    private static final double FARTHEST = 2;
    private static final int STEPS = 64;
    private static final int EVIDENCE = 3;

    private final List<Candidate> candidates;
    private final List<DipPoint> points;
    private final double mostSeen;
    private final double fewestSeen;

    FittedDips(List<Candidate> candidates, List<DipPoint> points) {
        this.candidates = candidates;
        this.points = List.copyOf(points);
        this.mostSeen = points.stream().mapToInt(p -> p.dips().high()).max().orElseThrow();
        this.fewestSeen = points.stream().mapToInt(p -> p.dips().low()).min().orElseThrow();
    }

    public List<DipPoint> points() {
        return points;
    }

    /** The most dips that any measured piece may have had. */
    public double mostDipsSeen() {
        return mostSeen;
    }

    /** Standard deviation of the pieces about the curve, as a part of their depth. */
    public double spread() {
        return Math.expm1(logSpread());
    }

    private double logSpread() {
        return candidates.stream()
                .mapToDouble(each -> each.weight() * each.spread())
                .sum();
    }

    /**
     * By what factor an answer is off, 1 or more: the geometric mean over all pieces, each asked for its own depth with the
     * curve of the others.
     */
    public double averageError() {
        double sum = 0;
        for (DipPoint left : points) {
            List<DipPoint> others =
                    points.stream().filter(point -> point != left).toList();
            double best = new FittedDips(DipFit.candidates(others), others).dips(left.logDepth())[1];
            sum += Math.abs(Math.log(best / left.dips().middle()));
        }
        return Math.exp(sum / points.size());
    }

    /**
     * The depth of one further piece.
     *
     * @param dips above 0
     */
    public DipEstimate pieceAt(double dips) {
        if (!(dips > 0) || Double.isInfinite(dips)) {
            throw Refusal.of("recipe.curve.number-of-dips", "found", NumberWords.plain(dips));
        }
        double mean = 0;
        double square = 0;
        for (Candidate each : candidates) {
            double middle = each.level() + each.curve().at(dips);
            mean += each.weight() * middle;
            square += each.weight() * (middle * middle + each.spread() * each.spread() + each.doubt());
        }
        double reach = REACH * Math.sqrt(square - mean * mean);
        return new DipEstimate(Math.exp(mean), new Interval(Math.exp(mean - reach), Math.exp(mean + reach)));
    }

    /**
     * The dips for a depth, counted from the undyed cloth.
     *
     * @param targetKs K/S above 0
     * @throws IllegalArgumentException if not above 0, NaN or infinite
     */
    public DipsNeeded dipsFor(double targetKs) {
        double target = Math.log(checked(targetKs));
        List<DipPoint> evidence = evidence(target);
        if (chance(each -> normal(target - each.level() - each.curve().at(FEWEST), oneFurther(each))) < TAIL) {
            return already(false, evidence);
        }
        if (chance(each -> normal(each.level() + each.curve().at(FARTHEST * mostSeen) - target, oneFurther(each)))
                < TAIL) {
            return never(false, evidence);
        }
        double[] dips = dips(target);
        return new DipsNeeded(verdict(target, dips[1]), false, dips[1], new Interval(dips[0], dips[2]), evidence);
    }

    /**
     * The further dips for a piece. Its own depth shows how this piece takes the dye, so only the way on from there is
     * uncertain: by the form of the curve, and by the spread of one piece for what is still to come.
     *
     * @param targetKs K/S above 0
     */
    public DipsNeeded moreDips(DipPoint from, double targetKs) {
        double target = Math.log(checked(targetKs));
        double deeper = target - from.logDepth();
        List<DipPoint> evidence = evidence(target);
        double had = from.dips().middle();
        double farthest = FARTHEST * Math.max(mostSeen, had);
        if (deeper <= 0) {
            return already(true, evidence);
        }
        if (chance(each -> normal(each.curve().at(farthest) - each.curve().at(had) - deeper, each.spread())) < TAIL) {
            return never(true, evidence);
        }
        double[] dips = quantiles(
                FEWEST / 2,
                farthest - had,
                had,
                (each, more) -> density(
                        deeper - each.curve().at(had + more) + each.curve().at(had), each.spread()));
        return new DipsNeeded(verdict(target, had + dips[1]), true, dips[1], new Interval(dips[0], dips[2]), evidence);
    }

    private Verdict verdict(double target, double dips) {
        double slack = logSpread();
        double[] seen = points.stream().mapToDouble(DipPoint::logDepth).sorted().toArray();
        if (dips > mostSeen || target > seen[seen.length - 1] + slack) {
            return Verdict.BEYOND_SEEN;
        }
        return dips < fewestSeen || target < seen[0] - slack ? Verdict.BELOW_SEEN : Verdict.WITHIN;
    }

    private static DipsNeeded already(boolean more, List<DipPoint> evidence) {
        return new DipsNeeded(Verdict.ALREADY_DEEPER, more, 0, new Interval(0, more ? 0 : 1), evidence);
    }

    private DipsNeeded never(boolean more, List<DipPoint> evidence) {
        Interval endless = new Interval(mostSeen, Double.POSITIVE_INFINITY);
        return new DipsNeeded(Verdict.NOT_REACHABLE, more, Double.POSITIVE_INFINITY, endless, evidence);
    }

    private double[] dips(double target) {
        return quantiles(
                FEWEST,
                FARTHEST * mostSeen,
                0,
                (each, n) -> density(target - each.level() - each.curve().at(n), oneFurther(each)));
    }

    private interface Likelihood {
        double of(Candidate candidate, double dips);
    }

    private interface Part {
        double of(Candidate candidate);
    }

    private double chance(Part part) {
        return candidates.stream()
                .mapToDouble(each -> each.weight() * part.of(each))
                .sum();
    }

    /** The middle of the probability and the ends that leave a tail on either side: low end, middle, high end. */
    private double[] quantiles(double low, double high, double had, Likelihood likelihood) {
        double step = Math.log(high / low) / STEPS;
        double[] below = new double[STEPS + 1];
        for (int i = 0; i < STEPS; i++) {
            double dips = low * Math.exp((i + 0.5) * step);
            double over = Math.max(1, (had + dips) / mostSeen);
            below[i + 1] = below[i] + chance(each -> likelihood.of(each, dips)) / (over * over);
        }
        double[] shares = {TAIL, 0.5, 1 - TAIL};
        for (int k = 0; k < shares.length; k++) {
            double wanted = shares[k] * below[STEPS];
            int i = 1;
            while (i < STEPS && below[i] < wanted) {
                i++;
            }
            shares[k] = low * Math.exp((i - 1 + (wanted - below[i - 1]) / (below[i] - below[i - 1])) * step);
        }
        return shares;
    }

    /** Standard deviation of one further piece whose curve is a candidate, in ln K/S. */
    private static double oneFurther(Candidate each) {
        return Math.sqrt(each.spread() * each.spread() + each.doubt());
    }

    private static double density(double miss, double spread) {
        return Math.exp(-miss * miss / (2 * spread * spread)) / spread;
    }

    private static double normal(double miss, double spread) {
        return 0.5 * Erf.erfc(-miss / (spread * Math.sqrt(2)));
    }

    private List<DipPoint> evidence(double target) {
        List<DipPoint> nearest = new ArrayList<>(points);
        nearest.sort(Comparator.comparingDouble(point -> Math.abs(point.logDepth() - target)));
        return nearest.subList(0, Math.min(EVIDENCE, nearest.size()));
    }

    private static double checked(double ks) {
        if (!(ks > 0) || Double.isInfinite(ks)) {
            throw Refusal.of("recipe.curve.depth", "found", NumberWords.plain(ks));
        }
        return ks;
    }
}
