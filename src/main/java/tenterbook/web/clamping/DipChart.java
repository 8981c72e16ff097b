package tenterbook.web.clamping;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import tenterbook.colour.compare.DepthOfShade;
import tenterbook.facts.DipEvidence.Dyed;
import tenterbook.facts.DipQuestion;
import tenterbook.measure.NumberWords;
import tenterbook.recipe.dip.DipEstimate;
import tenterbook.recipe.dip.FittedDips;

/**
 * The chart of a dip curve from half a dip on, in its own units: 100 across, 60 down.
 *
 * @param curve points of the polyline in SVG syntax
 * @param band outline of where nine in ten further pieces lie
 * @param targetY height of the target, negative where there is none or it lies above the chart
 * @param across numbers along the axis of dips
 * @param up numbers along the axis of K/S
 */
public record DipChart(List<Mark> points, String curve, String band, double targetY, List<Mark> across, List<Mark> up) {
    private static final int SEGMENTS = 60;
    private static final double FEWEST = 0.5;

    /** A point, or a number beside an axis. */
    public record Mark(double x, double y, String label, String fill, String number) {}

    /** From dips and K/S to places in the chart. */
    private record Axes(double mostDips, double mostKs) {
        double x(double dips) {
            return dips / mostDips * 100;
        }

        double y(double ks) {
            return 60 - ks / mostKs * 60;
        }
    }

    static DipChart of(DipQuestion question, FittedDips fitted) {
        double most = Math.max(8, fitted.mostDipsSeen() * 1.3);
        double[] dips = IntStream.rangeClosed(0, SEGMENTS)
                .mapToDouble(i -> FEWEST + (most - FEWEST) * i / SEGMENTS)
                .toArray();
        List<DipEstimate> along = Arrays.stream(dips).mapToObj(fitted::pieceAt).toList();
        Axes axes = new Axes(most, mostKs(along));
        List<String> band = line(dips, along, each -> each.plausible().high(), axes);
        List<String> lower = line(dips, along, each -> each.plausible().low(), axes);
        Collections.reverse(lower);
        band.addAll(lower);
        return new DipChart(
                points(question, axes),
                String.join(" ", line(dips, along, DipEstimate::value, axes)),
                String.join(" ", band),
                targetY(question, axes),
                across(axes),
                up(axes));
    }

    /** Room for the curve and, as far as it stays below twice the curve, for the band. */
    private static double mostKs(List<DipEstimate> along) {
        return along.stream()
                        .mapToDouble(each -> Math.min(each.plausible().high(), 2 * each.value()))
                        .max()
                        .orElseThrow()
                * 1.05;
    }

    private static List<String> line(
            double[] dips, List<DipEstimate> along, ToDoubleFunction<DipEstimate> ks, Axes axes) {
        List<String> line = new ArrayList<>();
        for (int i = 0; i < dips.length; i++) {
            double shown = Math.min(axes.mostKs, ks.applyAsDouble(along.get(i)));
            line.add(String.format(Locale.ROOT, "%.2f,%.2f", axes.x(dips[i]), axes.y(shown)));
        }
        return line;
    }

    private static List<Mark> points(DipQuestion question, Axes axes) {
        List<Mark> points = new ArrayList<>();
        for (Dyed each : question.inOrder()) {
            double ks = DepthOfShade.byPhoto(each.ground());
            points.add(new Mark(
                    axes.x(each.dips().middle()),
                    axes.y(Math.min(ks, axes.mostKs)),
                    w(
                            "dips.point",
                            "piece",
                            each.piece(),
                            "dips",
                            each.dips().text(),
                            "ks",
                            NumberWords.decimals(ks, 2)),
                    each.ground().srgb().hex(),
                    each.piece()));
        }
        return points;
    }

    private static double targetY(DipQuestion question, Axes axes) {
        if (question.target() == null) {
            return -1;
        }
        return question.target()
                .value()
                .filter(ks -> ks <= axes.mostKs)
                .map(axes::y)
                .orElse(-1.0);
    }

    private static List<Mark> across(Axes axes) {
        int step = step(axes.mostDips, 12, 30);
        List<Mark> across = new ArrayList<>();
        for (int dips = 0; dips <= axes.mostDips; dips += 2 * step) {
            across.add(new Mark(axes.x(dips), 64, Integer.toString(dips), "", ""));
        }
        return across;
    }

    private static List<Mark> up(Axes axes) {
        int step = step(axes.mostKs, 4, 10);
        List<Mark> up = new ArrayList<>();
        for (int ks = 0; ks <= axes.mostKs; ks += step) {
            up.add(new Mark(-1, axes.y(ks), Integer.toString(ks), "", ""));
        }
        return up;
    }

    /** 1, 2 above {@code middle} and 5 above {@code large}, so that no more than about ten numbers stand on an axis. */
    private static int step(double length, double middle, double large) {
        if (length > large) {
            return 5;
        }
        return length > middle ? 2 : 1;
    }
}
