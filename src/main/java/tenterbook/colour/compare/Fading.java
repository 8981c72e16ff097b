package tenterbook.colour.compare;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.descriptive.StreamingStatistics;
import tenterbook.colour.compare.Tiles.Tile;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Interval;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;

/**
 * Whether a piece has faded between two photographs, region by region.
 *
 * <p>A region is cut into up to 36 tiles; the change is that of the mean over the tiles, and the scatter of the tiles gives the
 * intervals: Student's t for ΔL*, Δa* and Δb*, a bootstrap over tiles (fixed seed) for the differences. Neighbouring tiles are
 * assumed independent, so intervals are too short where dye or light is uneven on a large scale.
 */
public final class Fading {
    private static final int LEAST_TILES = 6;
    private static final double LEAST_SEEN = 0.9;
    private static final int DRAWS = 1000;
    private static final long SEED = 20240229L;

    private Fading() {}

    /**
     * One region of aligned pictures.
     *
     * @param region part of the earlier picture
     * @param allowance ΔE between two pictures of an unchanged cloth in this studio, 0 or more: widens every difference's
     *     interval on both sides. 0 is right only for one camera, one light and no grey-card correction
     * @return refused where the later picture shows less than nine tenths of the region, or the region is too small
     * @throws IllegalStateException if the allowance is negative, NaN or infinite
     */
    public static MeasurementResult<RegionChange> compare(
            ComparedPicture before, ComparedPicture after, Alignment alignment, Region region, double allowance) {
        checked(allowance);
        Tiles cut = Tiles.of(before, after, alignment, region);
        if (cut.seen() < LEAST_SEEN) {
            return MeasurementResult.refused(
                    Message.of("change.part-not-seen", "share", NumberWords.percent(cut.seen(), 0)));
        }
        List<Tile> tiles = cut.tiles();
        if (tiles.size() < LEAST_TILES) {
            return MeasurementResult.refused(Message.of("change.part-too-small"));
        }
        Tile mean = mean(tiles);
        ColourChange change = ColourChange.between(mean.before(), mean.after());
        Interval lightness = interval(tiles, ColourChange::lightness);
        Interval a = interval(tiles, ColourChange::a);
        Interval b = interval(tiles, ColourChange::b);
        boolean still = lightness.holds(0) && a.holds(0) && b.holds(0);
        double[][] drawn = drawn(tiles);
        Interval cie1976 = around(change.cie1976(), drawn[0], still, allowance);
        return MeasurementResult.found(new RegionChange(
                mean.before(),
                mean.after(),
                change,
                lightness,
                around(change.ciede2000(), drawn[1], still, allowance),
                GreyScale.estimate(change.cie1976(), cie1976),
                a,
                b));
    }

    private static ColourChange change(Tile tile) {
        return ColourChange.between(tile.before(), tile.after());
    }

    private static Interval interval(List<Tile> tiles, ToDoubleFunction<ColourChange> part) {
        StreamingStatistics figures = new StreamingStatistics();
        tiles.forEach(tile -> figures.addValue(part.applyAsDouble(change(tile))));
        double n = tiles.size();
        double half = new TDistribution(n - 1).inverseCumulativeProbability(0.975)
                * figures.getStandardDeviation()
                / Math.sqrt(n);
        return new Interval(figures.getMean() - half, figures.getMean() + half);
    }

    /** ΔE*ab and ΔE00 of the mean over tiles drawn with replacement, each sorted. */
    private static double[][] drawn(List<Tile> tiles) {
        SplittableRandom random = new SplittableRandom(SEED);
        double[][] drawn = new double[2][DRAWS];
        Tile[] hand = new Tile[tiles.size()];
        for (int i = 0; i < DRAWS; i++) {
            for (int k = 0; k < hand.length; k++) {
                hand[k] = tiles.get(random.nextInt(hand.length));
            }
            ColourChange change = change(mean(Arrays.asList(hand)));
            drawn[0][i] = change.cie1976();
            drawn[1][i] = change.ciede2000();
        }
        Arrays.sort(drawn[0]);
        Arrays.sort(drawn[1]);
        return drawn;
    }

    private static Interval around(double value, double[] drawn, boolean still, double allowance) {
        double low = still ? 0 : Math.min(value, drawn[DRAWS / 40]);
        double high = Math.max(value, drawn[DRAWS - 1 - DRAWS / 40]);
        return new Interval(Math.max(0, low - allowance), high + allowance);
    }

    private static Tile mean(List<Tile> tiles) {
        double[] sum = new double[6];
        for (Tile tile : tiles) {
            sum[0] += tile.before().lightness();
            sum[1] += tile.before().a();
            sum[2] += tile.before().b();
            sum[3] += tile.after().lightness();
            sum[4] += tile.after().a();
            sum[5] += tile.after().b();
        }
        double n = tiles.size();
        return new Tile(new Lab(sum[0] / n, sum[1] / n, sum[2] / n), new Lab(sum[3] / n, sum[4] / n, sum[5] / n));
    }

    private static void checked(double allowance) {
        if (!(allowance >= 0) || Double.isInfinite(allowance)) {
            throw new IllegalStateException(
                    "The allowance for light and camera is a colour difference of 0 or more; found: " + allowance);
        }
    }
}
