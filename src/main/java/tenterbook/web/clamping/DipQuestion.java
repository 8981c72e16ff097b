package tenterbook.web.clamping;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tenterbook.colour.compare.DepthOfShade;
import tenterbook.colour.compare.ShadeReading;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.facts.DipEvidence;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.measure.NumberWords;
import tenterbook.recipe.dip.DipFit;
import tenterbook.recipe.dip.DipPoint;
import tenterbook.recipe.dip.DipsNeeded;
import tenterbook.recipe.dip.FittedDips;
import tenterbook.recipe.dip.Group;
import tenterbook.recipe.dip.PooledCurves;
import tenterbook.recipe.dip.VatColours;

/**
 * How many dips gave this depth on this cloth, and how many a target needs.
 *
 * <p>A cloth and vat with four distinct dip counts or more speaks for itself; one with fewer borrows from the rest of the
 * studio, and the answer says how much. Without four distinct counts anywhere there is no answer.
 *
 * @param group the cloth and vat asked about
 * @param dyed the pieces of that group
 * @param channel the channel of the photographs that stands in for reflectance
 * @param curve the fitted curve, or why there is none
 * @param borrowed how much of the rate comes from other groups: 0 own points alone, 1 others alone
 * @param target K/S of the target colour, or why it has none; null where no target was given
 * @param needed dips from undyed cloth to the target; null without a target or a curve
 * @param more further dips for a piece that has some; null where none was named
 * @param nearest the measured piece of this vat whose colour is nearest to the target; null without a target or a piece
 */
public record DipQuestion(
        Group group,
        List<Dyed> dyed,
        DepthOfShade.Channel channel,
        MeasurementResult<FittedDips> curve,
        double borrowed,
        MeasurementResult<ShadeReading> target,
        DipsNeeded needed,
        MeasurementResult<DipsNeeded> more,
        Nearest nearest) {
    /** @param difference ΔE00 from the target */
    public record Nearest(Dyed dyed, double difference) {}

    private static final int ENOUGH = 4;

    /** Cloths and vats that have at least one piece that speaks, the fullest first. */
    public static List<Group> groups(List<Dyed> all) {
        Map<Group, Long> counts =
                all.stream().collect(Collectors.groupingBy(Dyed::group, LinkedHashMap::new, Collectors.counting()));
        return counts.entrySet().stream()
                .sorted(Map.Entry.<Group, Long>comparingByValue().reversed())
                .map(Map.Entry::getKey)
                .toList();
    }

    /**
     * @param all what the archive has, from {@link DipEvidence#of(Archive)}
     * @param target colour to reach, or null
     * @param from a piece that is to be dipped further, or null
     */
    public static DipQuestion ask(List<Dyed> all, Group group, Lab target, Dyed from) {
        List<Dyed> own = all.stream().filter(each -> each.group().equals(group)).toList();
        DepthOfShade.Channel channel = all.isEmpty()
                ? DepthOfShade.Channel.RED
                : DepthOfShade.darkestChannel(all.stream().map(Dyed::ground).toList());
        List<DipPoint> points = DipEvidence.points(own, channel);
        MeasurementResult<FittedDips> curve;
        double borrowed = 0;
        if (distinct(points) >= ENOUGH) {
            curve = DipFit.of(points);
        } else {
            Map<Group, List<DipPoint>> pool = new LinkedHashMap<>();
            groups(all).forEach(each -> pool.put(each, new ArrayList<>()));
            pool.putIfAbsent(group, new ArrayList<>());
            DipEvidence.points(all, channel)
                    .forEach(point -> pool.get(point.group()).add(point));
            MeasurementResult<PooledCurves> pooled = PooledCurves.fit(pool);
            curve = pooled.value().isPresent()
                    ? pooled.map(curves -> curves.groups().get(group))
                    : MeasurementResult.refused(
                            w("dips.too-few-counts", "counts", distinct(points), "why", pooled.refusal()));
            borrowed =
                    pooled.value().map(curves -> curves.borrowed().get(group)).orElse(0.0);
        }
        List<Dyed> vat = all.stream()
                .filter(each -> each.group().vat().equals(group.vat()))
                .toList();
        MeasurementResult<ShadeReading> depth = target == null ? null : depth(target, vat, channel);
        Optional<FittedDips> fitted = curve.value();
        Optional<ShadeReading> shade = depth == null ? Optional.empty() : depth.value();
        DipsNeeded needed = fitted.isPresent() && shade.isPresent()
                ? fitted.get().dipsFor(shade.get().ks())
                : null;
        MeasurementResult<DipsNeeded> more = null;
        if (from != null && fitted.isPresent() && shade.isPresent()) {
            MeasurementResult<ShadeReading> now = DepthOfShade.byPhoto(from.ground(), channel);
            more = now.value().isPresent()
                    ? fitted.get().moreDips(now.value().get(), shade.get().ks())
                    : MeasurementResult.refused(now.reason());
        }
        Nearest nearest = target == null ? null : nearest(target, own.isEmpty() ? vat : own);
        return new DipQuestion(group, own, channel, curve, borrowed, depth, needed, more, nearest);
    }

    /** Depth alone would name dips for a red as well; so a colour that the vat's pieces do not pass near has none. */
    private static MeasurementResult<ShadeReading> depth(Lab target, List<Dyed> vat, DepthOfShade.Channel channel) {
        if (!vat.isEmpty()) {
            VatColours way = new VatColours(vat.stream().map(Dyed::ground).toList());
            if (!way.passNear(target)) {
                return MeasurementResult.refused(w(
                        "dips.another-colour",
                        "distance",
                        NumberWords.decimals(way.beside(target), 0),
                        "most",
                        NumberWords.decimals(VatColours.BESIDE, 0)));
            }
        }
        return DepthOfShade.byPhoto(target, channel);
    }

    private static Nearest nearest(Lab target, List<Dyed> pieces) {
        return pieces.stream()
                .map(each -> new Nearest(each, Ciede2000.difference(target, each.ground())))
                .min(Comparator.comparingDouble(Nearest::difference))
                .orElse(null);
    }

    private static long distinct(List<DipPoint> points) {
        return points.stream().map(point -> point.dips().text()).distinct().count();
    }

    public int uncalibrated() {
        return (int) dyed.stream().filter(each -> !each.calibrated()).count();
    }

    /** The pieces in order of dips. */
    public List<Dyed> inOrder() {
        return dyed.stream()
                .sorted(Comparator.comparingDouble(each -> each.dips().middle()))
                .toList();
    }
}
