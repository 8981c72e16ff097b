package tenterbook.recipe.dip;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tenterbook.colour.space.MeasurementResult;

/**
 * A curve for every cloth and vat; groups with few pieces borrow from the rest of the studio.
 *
 * <p>Each group's √c, ln A and ln b are pulled towards the middle of the studio by (parameter − middle)² / spread², the more
 * the fewer points the group has. Middle, spreads and the scatter of pieces are estimated from all groups at once by
 * expectation-maximisation on the curves' tangents (empirical Bayes, one scatter for all groups). With few groups the spreads
 * are poorly known, so the figures of {@link Pool#usualSpread} count as two further groups. Intervals are drawn from the
 * remaining normal distribution, with the uncertainty of the middle.
 *
 * @param studio the curve of all points, without groups
 * @param groups one curve for each group asked about, in the order given; one without points has the studio's middle
 * @param borrowed for each group, how much of its rate comes from the studio: 0 its own points alone, 1 the studio alone
 * @see "Lindstrom and Bates 1990, Nonlinear mixed effects models for repeated measures data, Biometrics 46; from memory"
 */
public record PooledCurves(FittedDips studio, Map<Group, FittedDips> groups, Map<Group, Double> borrowed) {
    public PooledCurves {
        groups = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(groups));
        borrowed = Map.copyOf(borrowed);
    }

    /**
     * Fits all groups together.
     *
     * @param groups points by group; a group may have few points or none
     * @return refused where the readings are of two kinds, or no curve can be fitted to all points together (see {@link
     *     DipFit#of})
     */
    public static MeasurementResult<PooledCurves> fit(Map<Group, List<DipPoint>> groups) {
        List<DipPoint> all =
                groups.values().stream().flatMap(Collection::stream).toList();
        return DipFit.of(all).map(studio -> pooled(studio, groups, all));
    }

    private static PooledCurves pooled(FittedDips studio, Map<Group, List<DipPoint>> groups, List<DipPoint> all) {
        Pool pool = new Pool(studio.curve(), studio.residualSpread());
        Map<Group, Integer> place = new LinkedHashMap<>();
        groups.forEach((group, points) -> {
            if (!points.isEmpty()) {
                place.put(group, pool.add(points));
            }
        });
        pool.settle();
        Map<Group, FittedDips> curves = new LinkedHashMap<>();
        Map<Group, Double> borrowed = new LinkedHashMap<>();
        groups.forEach((group, points) -> {
            Pool.Member member = points.isEmpty() ? pool.stranger() : pool.member(place.get(group));
            curves.put(
                    group,
                    new FittedDips(
                            CurveSearch.curve(new org.hipparchus.linear.ArrayRealVector(member.middle())),
                            new DrawnCurves(member.middle(), member.covariance()),
                            pool.scatter(),
                            Math.max(1, all.size() - 3 * (double) place.size()),
                            points,
                            all,
                            OptionalDouble.empty()));
            borrowed.put(group, member.borrowed());
        });
        return new PooledCurves(studio, curves, borrowed);
    }
}
