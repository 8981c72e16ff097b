package tenterbook.colour.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;

/**
 * Aligns two upright photographs of one cloth by shift, rotation and scale.
 *
 * <p>Rotation and scale are estimated from the log-polar spectra and from a few small rotations, the shift by phase
 * correlation; the best candidates are then optimised for the correlation of lightness, coarse to fine. Changes of brightness
 * and contrast, as by fading, do not matter. Perspective and wrinkles are not corrected; regions should be larger than their
 * effect.
 */
public final class Registration {
    private static final int COARSE = 128;
    private static final int FINE = 256;
    private static final int ROUGH = 64;
    /** Shifts tried to either side, over half the picture. */
    private static final int MOVES = 16;

    /** Standard deviation of L* below which a picture has no detail to align. */
    private static final double FLAT = 1.5;

    private static final double LEAST_CORRELATION = 0.6;
    /** Distance from which two placings are different, in parts of the side. */
    private static final double DIFFERENT = 0.06;
    /** A second placing with less than this multiple of the misfit is as good as the first. */
    private static final double AS_GOOD = 1.25;

    private static final int RADII = 128;
    private static final int ANGLES = 256;
    private static final double LEAST_RADIUS = 3;
    private static final double MOST_RADIUS = 48;
    private static final double MOST_LOG_SCALE = Math.log(2);

    private Registration() {}

    /**
     * @param before the earlier picture
     * @param after the later one; rotated by less than 90° and scaled by a factor of 0.5 to 2 relative to the earlier, after
     *     both were scaled to equal size
     * @return refused where a picture is flat, where no placing correlates by 0.6 over 40 % of the earlier picture, or where a
     *     second placing fits as well (a repeating pattern)
     */
    public static MeasurementResult<Alignment> align(ComparedPicture before, ComparedPicture after) {
        Plane whole1 = Plane.lightness(before);
        Plane whole2 = Plane.lightness(after);
        if (whole1.spread() < FLAT || whole2.spread() < FLAT) {
            return MeasurementResult.refused(
                    whole1.spread() < FLAT
                            ? Message.of("change.earlier-too-even")
                            : Message.of("change.later-too-even"));
        }
        Plane one = whole1.squared(COARSE);
        Plane other = whole2.squared(COARSE);
        List<Placing> best = distinct(guesses(one, other), 4).stream()
                .map(placing -> placing.settled(one, other, 0.02))
                .sorted(Comparator.comparingDouble(placing -> -placing.correlation()))
                .toList();
        Placing first = best.get(0);
        if (first.correlation() < LEAST_CORRELATION) {
            return MeasurementResult.refused(Message.of(
                    "change.not-laid-over",
                    "found",
                    NumberWords.decimals(Math.max(0, first.correlation()), 2),
                    "needed",
                    NumberWords.decimals(LEAST_CORRELATION, 2)));
        }
        if (fitsElsewhere(whole1.squared(ROUGH), whole2.squared(ROUGH), first)) {
            return MeasurementResult.refused(Message.of("change.pattern-repeats"));
        }
        Plane fine1 = whole1.squared(FINE);
        Plane fine2 = whole2.squared(FINE);
        Placing settled = first.settled(fine1, fine2, 0.003);
        Likeness likeness = settled.likeness(fine1, fine2);
        Alignment bare = settled.on(
                Math.max(before.width(), before.height()),
                Math.max(after.width(), after.height()),
                before.width(),
                before.height(),
                after.width(),
                after.height());
        return MeasurementResult.found(new Alignment(
                bare.scale(),
                bare.degrees(),
                bare.dx(),
                bare.dy(),
                likeness.correlation(),
                bare.middle1X(),
                bare.middle1Y(),
                bare.middle2X(),
                bare.middle2Y()));
    }

    /** Whether the later picture fits as well after another shift. */
    private static boolean fitsElsewhere(Plane one, Plane other, Placing first) {
        List<Placing> moved = new ArrayList<>();
        for (int y = -MOVES; y <= MOVES; y++) {
            for (int x = -MOVES; x <= MOVES; x++) {
                double dx = first.dx() + 0.5 * x / MOVES;
                double dy = first.dy() + 0.5 * y / MOVES;
                if (Math.hypot(dx - first.dx(), dy - first.dy()) > DIFFERENT) {
                    moved.add(Placing.tried(one, other, dx, dy, first.turn(), first.logScale()));
                }
            }
        }
        Placing here = first.settled(one, other, 0.005);
        return distinct(moved, 3).stream()
                .map(placing -> placing.settled(one, other, 0.01))
                .anyMatch(second -> second.apart(here) > DIFFERENT
                        && 1 - second.correlation() < AS_GOOD * (1 - here.correlation()) + 0.02);
    }

    private static List<Placing> guesses(Plane one, Plane other) {
        List<double[]> turns = new ArrayList<>();
        for (double degrees : new double[] {-6, -3, 0, 3, 6}) {
            for (double scale : new double[] {0.9, 1, 1.1}) {
                turns.add(new double[] {Math.toRadians(degrees), Math.log(scale)});
            }
        }
        Spectrum unrolled = unrolled(one);
        for (Spectrum.Shift shift : unrolled.shifts(unrolled(other), 6, 3)) {
            double turn = Math.PI * shift.dy() / ANGLES;
            double logScale = -Math.log(MOST_RADIUS / LEAST_RADIUS) * shift.dx() / RADII;
            if (Math.abs(logScale) <= MOST_LOG_SCALE) {
                turns.add(new double[] {turn, logScale});
            }
        }
        Spectrum still = Spectrum.of(one, true);
        List<Placing> guesses = new ArrayList<>();
        for (double[] turn : turns) {
            Plane turned = turned(other, turn[0], turn[1]);
            for (Spectrum.Shift shift : still.shifts(Spectrum.of(turned, true), 3, 4)) {
                // The shift was found in the rotated frame; a placing shifts in the frame of the later picture.
                double scale = Math.exp(turn[1]) / COARSE;
                double dx = scale * (Math.cos(turn[0]) * shift.dx() - Math.sin(turn[0]) * shift.dy());
                double dy = scale * (Math.sin(turn[0]) * shift.dx() + Math.cos(turn[0]) * shift.dy());
                guesses.add(Placing.tried(one, other, dx, dy, turn[0], turn[1]));
            }
        }
        return guesses;
    }

    private static Spectrum unrolled(Plane plane) {
        return Spectrum.of(Spectrum.of(plane, true).unrolled(RADII, ANGLES, LEAST_RADIUS, MOST_RADIUS), false);
    }

    /** The later plane, rotated and scaled back. */
    private static Plane turned(Plane plane, double turn, double logScale) {
        Alignment back = new Placing(0, 0, turn, logScale, 0).on(plane.width());
        double[] values = new double[plane.values().length];
        for (int y = 0; y < plane.height(); y++) {
            for (int x = 0; x < plane.width(); x++) {
                values[y * plane.width() + x] = plane.at(back.x(x, y), back.y(x, y));
            }
        }
        return new Plane(values, plane.width(), plane.height());
    }

    private static List<Placing> distinct(List<Placing> guesses, int most) {
        List<Placing> sorted = new ArrayList<>(guesses);
        sorted.sort(Comparator.comparingDouble(placing -> -placing.correlation()));
        List<Placing> kept = new ArrayList<>();
        for (Placing placing : sorted) {
            if (kept.size() < most && kept.stream().allMatch(k -> k.apart(placing) > DIFFERENT)) {
                kept.add(placing);
            }
        }
        return kept;
    }
}
