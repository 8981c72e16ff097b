package tenterbook.recipe.dip;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.TDistribution;
import tenterbook.colour.compare.ShadeReading;
import tenterbook.colour.space.Interval;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.measure.NumberWords;
import tenterbook.recipe.dip.DipsNeeded.Verdict;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/** A dip curve with its points and its uncertainty. Immutable. All depths are K/S on {@link #scale()}; all intervals 95 %. */
public final class FittedDips {
    private static final double UPPER = 0.975;
    private static final int EVIDENCE = 6;
    /** An upper end is unbounded if not found within this multiple of the most dips seen. */
    private static final double SEARCHED = 4;

    private final DipCurve curve;
    private final Plausible plausible;
    private final double scatter;
    private final double reach;
    private final List<DipPoint> points;
    private final double mostSeen;
    private final ShadeReading like;
    private final OptionalDouble leaveOneOut;

    /**
     * @param scatter standard deviation of a piece about the curve, K/S
     * @param spare degrees of freedom behind it
     */
    FittedDips(
            DipCurve curve,
            Plausible plausible,
            double scatter,
            double spare,
            List<DipPoint> points,
            List<DipPoint> archive,
            OptionalDouble leaveOneOut) {
        this.curve = curve;
        this.plausible = plausible;
        this.scatter = scatter;
        this.reach = scatter * new TDistribution(spare).inverseCumulativeProbability(UPPER);
        this.points = List.copyOf(points);
        this.mostSeen = archive.stream().mapToInt(p -> p.dips().high()).max().orElseThrow();
        this.like = archive.get(0).shade();
        this.leaveOneOut = leaveOneOut;
    }

    static FittedDips alone(Sample sample, DipCurve curve) {
        int spare = sample.size() - 3;
        double sum = 0;
        for (int i = 0; i < sample.size(); i++) {
            DipCurve others = new Profile(sample.without(i)).best();
            double miss = others == null ? sample.ks(i) : sample.ks(i) - others.mean(sample.dips(i));
            sum += miss * miss;
        }
        return new FittedDips(
                curve,
                new LikelyCurves(sample, curve),
                Math.sqrt(sample.squares(curve) / spare),
                spare,
                sample.points,
                sample.points,
                OptionalDouble.of(Math.sqrt(sum / sample.size())));
    }

    public DipCurve curve() {
        return curve;
    }

    /** The points of this curve's group; of a curve without groups, all of them. */
    public List<DipPoint> points() {
        return points;
    }

    /** Source of the readings: {@code a photograph, red channel}. */
    public String scale() {
        return like.scale();
    }

    /** The most dips that any measured piece may have had. */
    public double mostDipsSeen() {
        return mostSeen;
    }

    /** Standard deviation of the pieces about the curve, K/S. */
    public double residualSpread() {
        return scatter;
    }

    /**
     * Leave-one-out error: root mean square of K/S over all points, each predicted from the others. Empty for a curve that
     * borrows from other groups.
     */
    public OptionalDouble leaveOneOutError() {
        return leaveOneOut;
    }

    public Interval base() {
        return plausible.range(DipCurve::base);
    }

    /** A; the high end is infinite where a straight line fits as well. */
    public Interval rise() {
        return open(plausible.range(DipCurve::rise));
    }

    /** b per dip; the low end is 0 where a straight line fits as well. */
    public Interval rate() {
        Interval rate = plausible.range(DipCurve::rate);
        return plausible.endless() ? new Interval(0, rate.high()) : rate;
    }

    /** Where the shade plausibly levels off; the high end is infinite where a straight line fits as well. */
    public Interval limit() {
        return open(plausible.range(DipCurve::limit));
    }

    private Interval open(Interval interval) {
        return plausible.endless() ? new Interval(interval.low(), Double.POSITIVE_INFINITY) : interval;
    }

    /**
     * The mean depth of many pieces of so many dips.
     *
     * @param dips 0 or more
     */
    public DipEstimate curveAt(double dips) {
        checked("recipe.curve.number-of-dips", dips);
        return new DipEstimate(curve.at(dips), plausible.range(c -> c.at(dips)));
    }

    /** The depth of one further piece; its interval adds the uncertainty of the curve and the scatter of pieces as squares. */
    public DipEstimate pieceAt(double dips) {
        DipEstimate mean = curveAt(dips);
        double down = Math.hypot(mean.value() - mean.plausible().low(), reach);
        double up = Math.hypot(mean.plausible().high() - mean.value(), reach);
        return new DipEstimate(mean.value(), new Interval(Math.max(0, mean.value() - down), mean.value() + up));
    }

    /**
     * The dips for a depth, counted from the undyed cloth.
     *
     * @param targetKs K/S on {@link #scale()}, 0 or more
     * @throws IllegalArgumentException if negative, NaN or infinite
     */
    public DipsNeeded dipsFor(double targetKs) {
        checked("recipe.curve.depth", targetKs);
        double best = curve.dipsFor(targetKs);
        Verdict verdict = targetKs <= curve.base() ? Verdict.ALREADY_DEEPER : verdict(targetKs);
        return new DipsNeeded(verdict, false, best, dipsAround(targetKs), evidence(targetKs));
    }

    /**
     * The further dips for a piece whose depth was read. The interval has the uncertainty of the curve alone, since the reading
     * shows how this piece takes the dye.
     *
     * @return refused where the reading is on another scale than the curve
     */
    public MeasurementResult<DipsNeeded> moreDips(ShadeReading now, double targetKs) {
        checked("recipe.curve.depth", targetKs);
        if (!now.sameScale(like)) {
            return MeasurementResult.refused(
                    Message.of("recipe.curve.other-scale", "piece", now.scale(), "curve", scale())
                            .inEnglish());
        }
        double best = curve.dipsBetween(now.ks(), targetKs);
        Interval further = plausible.range(c -> c.dipsBetween(now.ks(), targetKs));
        Verdict verdict = best == 0 ? Verdict.ALREADY_DEEPER : verdict(targetKs);
        return MeasurementResult.found(new DipsNeeded(verdict, true, best, further, evidence(targetKs)));
    }

    private Verdict verdict(double targetKs) {
        if (targetKs > limit().high()) {
            return Verdict.NOT_REACHABLE;
        }
        return curve.dipsFor(targetKs) > mostSeen ? Verdict.BEYOND_SEEN : Verdict.WITHIN;
    }

    /** From the first dips that might give the depth to one piece, to the first that give it to nearly all. */
    private Interval dipsAround(double targetKs) {
        return new Interval(
                first(n -> pieceAt(n).plausible().high() >= targetKs),
                first(n -> pieceAt(n).plausible().low() >= targetKs));
    }

    private double first(java.util.function.DoublePredicate enough) {
        double high = SEARCHED * Math.max(1, mostSeen);
        if (!enough.test(high)) {
            return Double.POSITIVE_INFINITY;
        }
        double low = 0;
        if (enough.test(low)) {
            return 0;
        }
        while (high - low > 1e-3) {
            double middle = (low + high) / 2;
            if (enough.test(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    private List<DipPoint> evidence(double targetKs) {
        return points.stream()
                .sorted(Comparator.comparingDouble(point -> Math.abs(point.ks() - targetKs)))
                .limit(EVIDENCE)
                .toList();
    }

    private static void checked(String refusal, double value) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            throw Refusal.of(refusal, "found", NumberWords.plain(value));
        }
    }
}
