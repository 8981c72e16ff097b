package tenterbook.recipe.dip;

import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.hipparchus.stat.regression.SimpleRegression;
import tenterbook.colour.compare.ShadeReading;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.words.Listing;
import tenterbook.words.Message;

/** Fits the dip curve of a set of points, or refuses with a reason. */
public final class DipFit {
    /** Three unknowns need a fourth number of dips to leave a degree of freedom. */
    static final int LEAST_COUNTS = 4;

    private static final int REWEIGHINGS = 4;
    /** Significance level, one-sided. */
    private static final double RISE_BY_CHANCE = 0.05;

    private DipFit() {}

    /**
     * The curve through all points by least squares, whatever their groups; a count with a range weighs less.
     *
     * <p>Intervals are 95 %, by profile likelihood, and assume a normal scatter of constant variance. Refused: fewer than four
     * different numbers of dips; readings of two kinds or bands; shades that do not rise with the dips (one-sided t-test at 5
     * %); a rise so straight that no levelling-off is seen; a shade already level at the fewest dips.
     *
     * @param points one or more for each finished piece; order does not matter
     */
    public static MeasurementResult<FittedDips> of(List<DipPoint> points) {
        Optional<Message> refusal = refusal(points);
        if (refusal.isPresent()) {
            return MeasurementResult.refused(refusal.get().inEnglish());
        }
        Sample sample = Sample.of(points);
        DipCurve curve = new Profile(sample).best();
        for (int i = 0; curve != null && sample.anyRange() && i < REWEIGHINGS; i++) {
            sample = sample.weighed(curve, sample.squares(curve) / (sample.size() - 3));
            curve = new Profile(sample).best();
        }
        Profile profile = new Profile(sample);
        if (curve == null || curve.rate() <= profile.leastRate * 1.001) {
            return MeasurementResult.refused(
                    Message.of("recipe.curve.straight", "dips", seen(points)).inEnglish());
        }
        if (curve.rate() >= profile.mostRate * 0.999) {
            return MeasurementResult.refused(Message.of("recipe.curve.level").inEnglish());
        }
        return MeasurementResult.found(FittedDips.alone(sample, curve));
    }

    /** Why no curve can be fitted to these points; empty where one can. */
    static Optional<Message> refusal(List<DipPoint> points) {
        Optional<Message> mixed = mixed(points);
        if (mixed.isPresent()) {
            return mixed;
        }
        TreeSet<Double> counts =
                points.stream().map(point -> point.dips().middle()).collect(Collectors.toCollection(TreeSet::new));
        if (counts.size() < LEAST_COUNTS) {
            return Optional.of(Message.of("recipe.curve.few", "least", LEAST_COUNTS, "found", counts.size()));
        }
        SimpleRegression line = new SimpleRegression();
        points.forEach(point -> line.addData(point.dips().middle(), point.ks()));
        if (!(line.getSlope() > 0) || line.getSignificance() / 2 > RISE_BY_CHANCE) {
            return Optional.of(Message.of("recipe.curve.no-rise"));
        }
        return Optional.empty();
    }

    /** A refusal of readings on two scales; empty where there is one. */
    static Optional<Message> mixed(List<DipPoint> points) {
        List<String> scales = points.stream()
                .map(DipPoint::shade)
                .map(ShadeReading::scale)
                .distinct()
                .toList();
        return scales.size() < 2
                ? Optional.empty()
                : Optional.of(Message.of("recipe.curve.mixed", "scales", Listing.and(scales)));
    }

    private static int seen(List<DipPoint> points) {
        return points.stream().mapToInt(point -> point.dips().high()).max().orElse(0);
    }
}
