package tenterbook.recipe.dip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.stat.regression.SimpleRegression;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.measure.Threshold;
import tenterbook.words.Message;

/**
 * Fits dip curves to the pieces of one cloth in one vat, or refuses with a reason.
 *
 * <p>A piece's ln K/S is a level + {@link DipCurve#at} + an error of one spread. The error is constant in the logarithm, because a
 * vat is stronger or weaker by a factor, and because an error of a photograph in L* changes ln K/S by nearly the same amount
 * at every depth of dyed cloth: 0.07 to 0.09 for one L* between L* 30 and 75, computed.
 *
 * <p>Every curve of a grid is kept with the probability that the pieces give it (Bayes' rule). Before any piece is seen, the
 * bend (b × most dips)^p is equally likely from none (0.02) to all levelled off (6), the logarithm of the spread likewise from
 * 3 to 70 %, the level anything, and the power normal about 1 with 0.3. These are ours; the bounds of
 * {@code DipAccuracyTest} hold for them.
 */
public final class DipFit {
    /** Level, form and spread are three unknowns; a fourth number of dips shows whether they describe the vat. */
    static final int LEAST_COUNTS = (int) Threshold.number("dips-counts");

    /** Significance level, one-sided. */
    private static final double RISE_BY_CHANCE = 0.05;

    private static final double LEAST_BEND = 0.02;
    private static final double MOST_BEND = 6;
    private static final int BENDS = 10;
    private static final double POWER_SPREAD = 0.3;
    private static final double LEAST_SPREAD = 0.03;
    private static final double MOST_SPREAD = 0.7;
    private static final int SPREADS = 8;
    /** Curves less probable than this part of the most probable one change no figure that is shown. */
    private static final double NEGLIGIBLE = 1e-4;

    private DipFit() {}

    /**
     * Refused: fewer than four different numbers of dips; shades that do not rise with the dips (one-sided t-test at 5 %).
     *
     * @param points of one cloth and vat, in any order; undyed pieces are left out
     */
    public static MeasurementResult<FittedDips> of(List<DipPoint> points) {
        List<DipPoint> dipped =
                points.stream().filter(point -> point.dips().high() > 0).toList();
        Optional<Message> refusal = refusal(dipped);
        return refusal.isPresent()
                ? MeasurementResult.refused(refusal.get())
                : MeasurementResult.found(new FittedDips(candidates(dipped), dipped));
    }

    private static Optional<Message> refusal(List<DipPoint> points) {
        long counts =
                points.stream().map(point -> point.dips().middle()).distinct().count();
        if (counts < LEAST_COUNTS) {
            return Optional.of(Message.of("recipe.curve.few", "least", LEAST_COUNTS, "found", counts));
        }
        SimpleRegression line = new SimpleRegression();
        points.forEach(point -> line.addData(Math.log(point.dips().middle()), point.logDepth()));
        return line.getSlope() > 0 && !(line.getSignificance() / 2 > RISE_BY_CHANCE)
                ? Optional.empty()
                : Optional.of(Message.of("recipe.curve.no-rise"));
    }

    /**
     * A curve that may be that of the pieces.
     *
     * @param weight its probability; those of all candidates add up to 1
     * @param level most likely logarithm of K/S that endless dipping approaches
     * @param spread standard deviation of a piece about the curve, in ln K/S
     * @param doubt variance of the level
     */
    record Candidate(DipCurve curve, double weight, double level, double spread, double doubt) {}

    static List<Candidate> candidates(List<DipPoint> points) {
        double most = points.stream().mapToDouble(p -> p.dips().high()).max().orElseThrow();
        List<Candidate> all = new ArrayList<>();
        for (int i = 0; i < BENDS; i++) {
            double bend = LEAST_BEND + (MOST_BEND - LEAST_BEND) * i / (BENDS - 1);
            for (double power = 0.4; power < 1.65; power += 0.1) {
                DipCurve curve = new DipCurve(Math.pow(bend, 1 / power) / most, power);
                // Above the curve by so much in ln K/S, and with that variance because the count is a range.
                double[] above = points.stream()
                        .mapToDouble(point -> point.logDepth() - curve.mean(point.dips()))
                        .toArray();
                double[] vague = points.stream()
                        .mapToDouble(point -> curve.vagueness(point.dips()))
                        .toArray();
                for (int k = 0; k < SPREADS; k++) {
                    double spread = LEAST_SPREAD * Math.pow(MOST_SPREAD / LEAST_SPREAD, k / (SPREADS - 1.0));
                    all.add(candidate(curve, spread, above, vague));
                }
            }
        }
        double best = all.stream().mapToDouble(Candidate::weight).max().orElseThrow();
        List<Candidate> kept = all.stream()
                .map(each -> weighing(each, Math.exp(each.weight - best)))
                .filter(each -> each.weight > NEGLIGIBLE)
                .toList();
        double sum = kept.stream().mapToDouble(Candidate::weight).sum();
        return kept.stream().map(each -> weighing(each, each.weight / sum)).toList();
    }

    private static Candidate weighing(Candidate each, double weight) {
        return new Candidate(each.curve, weight, each.level, each.spread, each.doubt);
    }

    /** With the logarithm of its probability as weight, the level integrated out; up to a constant. */
    private static Candidate candidate(DipCurve curve, double spread, double[] above, double[] vague) {
        double certainty = 0;
        double sum = 0;
        double squares = 0;
        double odds = 0;
        for (int i = 0; i < above.length; i++) {
            double w = 1 / (spread * spread + vague[i]);
            certainty += w;
            sum += w * above[i];
            squares += w * above[i] * above[i];
            odds += Math.log(w) / 2;
        }
        double level = sum / certainty;
        double unusual = (curve.power() - 1) / POWER_SPREAD;
        odds -= (squares - level * sum + Math.log(certainty) + unusual * unusual) / 2;
        return new Candidate(curve, odds, level, spread, 1 / certainty);
    }
}
