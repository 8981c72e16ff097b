package tenterbook.facts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.compare.DepthOfShade;
import tenterbook.colour.compare.ShadeReading;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.measure.NumberWords;
import tenterbook.recipe.dip.DipFit;
import tenterbook.recipe.dip.DipPoint;
import tenterbook.recipe.dip.DipsNeeded;
import tenterbook.recipe.dip.FittedDips;
import tenterbook.recipe.dip.Group;
import tenterbook.recipe.dip.PooledCurves;
import tenterbook.recipe.dip.VatColours;
import tenterbook.words.Message;

/**
 * How many dips gave this depth on this cloth, and how many a target needs.
 *
 * <p>A cloth and vat with pieces of at least {@value #ENOUGH} distinct dip counts has a curve of its own. One with fewer
 * borrows from the studio's other groups, and {@code borrowed} states how much. Without {@value #ENOUGH} distinct counts
 * anywhere there is no curve.
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
        @Nullable MeasurementResult<ShadeReading> target,
        @Nullable DipsNeeded needed,
        @Nullable MeasurementResult<DipsNeeded> more,
        @Nullable Nearest nearest) {
    /** @param difference ΔE00 from the target */
    public record Nearest(Dyed dyed, double difference) {}

    private static final int ENOUGH = 4;

    /** Cloths and vats with at least one usable piece, those with most pieces first. */
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
    public static DipQuestion ask(List<Dyed> all, Group group, @Nullable Lab target, @Nullable Dyed from) {
        List<Dyed> own = all.stream().filter(each -> each.group().equals(group)).toList();
        DepthOfShade.Channel channel = all.isEmpty()
                ? DepthOfShade.Channel.RED
                : DepthOfShade.darkestChannel(all.stream().map(Dyed::ground).toList());
        Curve curve = Curve.of(all, own, group, channel);
        List<Dyed> vat = all.stream()
                .filter(each -> each.group().vat().equals(group.vat()))
                .toList();
        MeasurementResult<ShadeReading> depth = target == null ? null : depth(target, vat, channel);
        Optional<FittedDips> fitted = curve.fitted().value();
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
        return new DipQuestion(group, own, channel, curve.fitted(), curve.borrowed(), depth, needed, more, nearest);
    }

    /** The curve of a group, its own or with what is borrowed. */
    private record Curve(MeasurementResult<FittedDips> fitted, double borrowed) {
        static Curve of(List<Dyed> all, List<Dyed> own, Group group, DepthOfShade.Channel channel) {
            List<DipPoint> points = DipEvidence.points(own, channel);
            long counts =
                    points.stream().map(point -> point.dips().text()).distinct().count();
            if (counts >= ENOUGH) {
                return new Curve(DipFit.of(points), 0);
            }
            Map<Group, List<DipPoint>> pool = new LinkedHashMap<>();
            groups(all).forEach(each -> pool.put(each, new ArrayList<>()));
            pool.putIfAbsent(group, new ArrayList<>());
            DipEvidence.points(all, channel)
                    .forEach(point -> pool.get(point.group()).add(point));
            MeasurementResult<PooledCurves> pooled = PooledCurves.fit(pool);
            if (pooled.value().isEmpty()) {
                return new Curve(
                        MeasurementResult.refused(
                                Message.of("dips.too-few-counts", "counts", counts, "why", pooled.reason())),
                        0);
            }
            return new Curve(
                    pooled.map(curves -> curves.groups().get(group)),
                    pooled.value().get().borrowed().get(group));
        }
    }

    /** Depth alone would give dips for a red, too; so a colour far from those of the vat's pieces has none. */
    private static MeasurementResult<ShadeReading> depth(Lab target, List<Dyed> vat, DepthOfShade.Channel channel) {
        if (!vat.isEmpty()) {
            VatColours way = new VatColours(vat.stream().map(Dyed::ground).toList());
            if (!way.passNear(target)) {
                return MeasurementResult.refused(Message.of(
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
