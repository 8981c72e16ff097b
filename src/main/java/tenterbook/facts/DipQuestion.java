package tenterbook.facts;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.compare.DepthOfShade;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Threshold;
import tenterbook.recipe.dip.DipFit;
import tenterbook.recipe.dip.DipsNeeded;
import tenterbook.recipe.dip.FittedDips;
import tenterbook.recipe.dip.Group;
import tenterbook.recipe.dip.VatColours;
import tenterbook.words.Message;

/**
 * How many dips gave this depth on this cloth, and how many a target needs.
 *
 * <p>Only pieces of the cloth in the vat asked about are used: cloths take up dye differently, and few pieces of one tell little
 * of how differently. A cloth that was never in that vat, or with fewer than four different dip counts, gets no estimate.
 *
 * @param group the cloth and vat asked about
 * @param dyed the pieces of that group
 * @param curve the fitted curve, or why there is none
 * @param target K/S of the target colour, or why it has none; null where no target was given
 * @param needed dips from undyed cloth to the target; null without a target or a curve
 * @param more further dips for a piece that has some; null where none was named
 * @param nearest the measured piece of this cloth, else of this vat, whose colour is nearest to the target; null without a
 *     target or a piece
 */
public record DipQuestion(
        Group group,
        List<Dyed> dyed,
        MeasurementResult<FittedDips> curve,
        @Nullable MeasurementResult<Double> target,
        @Nullable DipsNeeded needed,
        @Nullable DipsNeeded more,
        @Nullable Nearest nearest) {
    /**
     * A measured piece beside the answer.
     *
     * @param difference ΔE00 from the target
     * @param disagrees whether the piece has the target's colour, and its dips differ from the answer by more than {@link
     *     #APART}
     */
    public record Nearest(Dyed dyed, double difference, boolean disagrees) {}

    /** Pieces no farther than this from the target, ΔE00, have its colour: below the error of a photograph. */
    private static final double SAME = 1;
    /** Nine in ten answers are off by no more than this factor; see {@code DipAccuracyTest}. */
    private static final double APART = Threshold.number("dips-apart");

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
     * @param from a piece of this group that is to be dipped further, or null
     */
    public static DipQuestion ask(List<Dyed> all, Group group, @Nullable Lab target, @Nullable Dyed from) {
        List<Dyed> own = all.stream().filter(each -> each.group().equals(group)).toList();
        MeasurementResult<FittedDips> curve = own.isEmpty()
                ? MeasurementResult.refused(Message.of("dips.never-in-this-vat"))
                : DipFit.of(DipEvidence.points(own));
        if (target == null) {
            return new DipQuestion(group, own, curve, null, null, null, null);
        }
        List<Dyed> vat = all.stream()
                .filter(each -> each.group().vat().equals(group.vat()))
                .toList();
        MeasurementResult<Double> depth = depth(target, vat);
        DipsNeeded needed = null;
        DipsNeeded more = null;
        if (curve.value().isPresent() && depth.value().isPresent()) {
            FittedDips fitted = curve.value().get();
            needed = holdingTheSame(fitted.dipsFor(depth.value().get()), own, target);
            more = from == null
                    ? null
                    : fitted.moreDips(DipEvidence.point(from), depth.value().get());
        }
        return new DipQuestion(
                group, own, curve, depth, needed, more, nearest(target, own.isEmpty() ? vat : own, needed));
    }

    /** An interval holds the dips of every piece that has this very colour, whatever the other pieces say. */
    private static DipsNeeded holdingTheSame(DipsNeeded needed, List<Dyed> own, Lab target) {
        DipsNeeded holding = needed;
        for (Dyed each : own) {
            if (Ciede2000.difference(target, each.ground()) <= SAME) {
                holding = holding.holding(each.dips());
            }
        }
        return holding;
    }

    /** Depth alone would give dips for a red, too; so a colour far from those of the vat's pieces has none. */
    private static MeasurementResult<Double> depth(Lab target, List<Dyed> vat) {
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
        return MeasurementResult.found(DepthOfShade.byPhoto(target));
    }

    private static @Nullable Nearest nearest(Lab target, List<Dyed> pieces, @Nullable DipsNeeded needed) {
        return pieces.stream()
                .map(each -> {
                    double difference = Ciede2000.difference(target, each.ground());
                    return new Nearest(each, difference, difference <= SAME && needed != null && apart(each, needed));
                })
                .min(Comparator.comparingDouble(Nearest::difference))
                .orElse(null);
    }

    private static boolean apart(Dyed piece, DipsNeeded needed) {
        return needed.best() > APART * piece.dips().high()
                || needed.best() < piece.dips().low() / APART;
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
