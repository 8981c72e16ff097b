package tenterbook.colour.target;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.colour.palette.RegionColour;
import tenterbook.words.Message;

/**
 * Looks for a chart of 24 patches, {@link ChartFinder}, and for a grey card: a part of even, nearly grey colour with four straight sides, 0.2 % to 12.5 % of the picture, at most
 * 2.5 times as long as wide, not at the picture's edges or across one. A proposal only: a plain grey thing of that shape looks
 * the same, so a person sees the corners and may move them.
 */
public final class CardFinder {
    public static final Message NONE_FOUND = Message.of("card.none-found");

    private static final int LONG_EDGE = 700;
    private static final double LEAST_AREA = 0.002;
    private static final double MOST_AREA = 0.125;
    private static final double LEAST_FILL = 0.9;
    private static final double LONGEST = 2.5;
    /**
     * Greatest deviation of L from a plane, block by block. In 60 rendered photographs cards have 0.33 or less, flagstones,
     * wood and walls of like shape 0.49 or more. A card in a very noisy photograph may exceed it; then the corners are marked
     * by hand.
     */
    private static final double MOST_TEXTURE = 0.42;

    private static final double LEAST_SCORE = 0.45;

    /**
     * From this score and within these lightnesses a card counts before a person has looked. In the sample's 69 photographs all 69
     * things so found are the grey card, with scores of 0.76 or more and lightnesses of 46 to 51; nothing else was found there.
     */
    private static final double SURE_SCORE = 0.7;

    private static final double SURE_DARKEST = 30;
    private static final double SURE_LIGHTEST = 70;

    private CardFinder() {}

    /**
     * @param outline its corners, clockwise
     * @param score of a card 0.45 to 1: from how well it fills four straight sides, how even and how grey it is; of a chart which
     *     share of its patches was seen; not a probability
     * @param chart whether it is a chart of 24 patches; else a card of one colour
     */
    public record Found(CardOutline outline, double score, boolean chart) {}

    /** The likeliest card; empty where there is none, see {@link #NONE_FOUND}. */
    public static Optional<Found> find(Pixels picture) {
        return all(picture).stream().findFirst();
    }

    /** What is so like a grey card that it counts before a person has looked at it; empty where there is none. */
    public static Optional<CardOutline> sure(Pixels picture) {
        return all(picture).stream()
                .filter(found -> !found.chart && found.score >= SURE_SCORE)
                .map(Found::outline)
                .filter(outline -> {
                    double lightness = RegionColour.of(
                                    picture.argb(), picture.width(), picture.height(), outline.inner())
                            .mean()
                            .lightness();
                    return lightness >= SURE_DARKEST && lightness <= SURE_LIGHTEST;
                })
                .findFirst();
    }

    /** Everything that looks like a card, the likeliest first; before them a chart, whose own patches are no cards. */
    public static List<Found> all(Pixels picture) {
        LabRaster raster = LabRaster.of(picture, LONG_EDGE);
        EvenParts parts = new EvenParts(raster);
        List<Found> found = new ArrayList<>();
        for (EvenParts.EvenPatch part :
                parts.grow((int) (LEAST_AREA * raster.size()), (int) (MOST_AREA * raster.size()))) {
            candidate(picture, raster, part).ifPresent(found::add);
        }
        found.sort(Comparator.comparingDouble(Found::score).reversed());
        Optional<ChartFinder.Seen> chart = ChartFinder.look(raster);
        if (chart.isPresent()) {
            found.removeIf(card -> partOf(chart.get(), card.outline, raster));
            CardOutline outline = chart.get().outline();
            if (outline != null) {
                found.add(0, new Found(outline, chart.get().squares() / (double) ChartReference.PATCHES, true));
            }
        }
        return found;
    }

    /** Whether a card's middle lies on one of the neutrals, or within the chart. */
    private static boolean partOf(ChartFinder.Seen chart, CardOutline card, LabRaster raster) {
        double x = card.corners().stream().mapToDouble(Corner::x).sum() / 4;
        double y = card.corners().stream().mapToDouble(Corner::y).sum() / 4;
        return chart.outline() != null && chart.outline().whole().contains(x, y)
                || chart.neutrals().stream()
                        .anyMatch(
                                square -> Math.hypot(x / raster.across(1) - square.x(), y / raster.down(1) - square.y())
                                        < square.side() / 2);
    }

    private static Optional<Found> candidate(Pixels picture, LabRaster raster, EvenParts.EvenPatch part) {
        if (part.unevenness() > MOST_TEXTURE || edgesTouched(raster, part.cells()) > 1) {
            return Optional.empty();
        }
        Optional<double[][]> rough = QuadFit.around(cellCorners(raster, part.cells()));
        if (rough.isEmpty()) {
            return Optional.empty();
        }
        double fill = part.cells().length / QuadFit.area(rough.get());
        if (fill < LEAST_FILL || lengthening(rough.get()) > LONGEST || !cornered(rough.get())) {
            return Optional.empty();
        }
        double score = fill * Math.exp(-part.unevenness() / 6) * Math.exp(-part.chroma() / 40);
        if (score < LEAST_SCORE) {
            return Optional.empty();
        }
        double[][] inPicture = scaled(rough.get(), raster.block());
        double[][] fine = CardEdges.refine(picture, inPicture, 2.5 * raster.block());
        List<Corner> corners = new ArrayList<>();
        for (double[] p : fine) {
            corners.add(new Corner(inside(p[0] / picture.width()), inside(p[1] / picture.height())));
        }
        try {
            return Optional.of(new Found(new CardOutline(corners), score, false));
        } catch (CardRefused folded) {
            return Optional.empty();
        }
    }

    private static int edgesTouched(LabRaster raster, int[] cells) {
        boolean[] touched = new boolean[4];
        for (int cell : cells) {
            int x = cell % raster.width();
            int y = cell / raster.width();
            touched[0] |= x == 0;
            touched[1] |= x == raster.width() - 1;
            touched[2] |= y == 0;
            touched[3] |= y == raster.height() - 1;
        }
        int count = 0;
        for (boolean edge : touched) {
            count += edge ? 1 : 0;
        }
        return count;
    }

    /** The corners of the first and the last cell of each row: all that the convex hull of the cells can rest on. */
    static List<double[]> cellCorners(LabRaster raster, int[] cells) {
        int[] first = new int[raster.height()];
        int[] last = new int[raster.height()];
        Arrays.fill(first, Integer.MAX_VALUE);
        Arrays.fill(last, -1);
        for (int cell : cells) {
            int x = cell % raster.width();
            int y = cell / raster.width();
            first[y] = Math.min(first[y], x);
            last[y] = Math.max(last[y], x);
        }
        List<double[]> points = new ArrayList<>();
        for (int y = 0; y < last.length; y++) {
            if (last[y] >= 0) {
                points.add(new double[] {first[y], y});
                points.add(new double[] {first[y], y + 1});
                points.add(new double[] {last[y] + 1, y});
                points.add(new double[] {last[y] + 1, y + 1});
            }
        }
        return points;
    }

    static double lengthening(double[][] quad) {
        double one = side(quad, 0) + side(quad, 2);
        double other = side(quad, 1) + side(quad, 3);
        return Math.max(one, other) / Math.max(1e-9, Math.min(one, other));
    }

    /** Whether every corner is within 35° of a right one: a card lies fairly flat to the camera. */
    static boolean cornered(double[][] quad) {
        for (int i = 0; i < 4; i++) {
            double[] a = quad[i];
            double[] b = quad[(i + 1) % 4];
            double[] c = quad[(i + 2) % 4];
            double dot = (a[0] - b[0]) * (c[0] - b[0]) + (a[1] - b[1]) * (c[1] - b[1]);
            if (Math.abs(dot) > Math.sin(Math.toRadians(35)) * side(quad, i) * side(quad, i + 1)) {
                return false;
            }
        }
        return true;
    }

    private static double side(double[][] quad, int i) {
        double[] a = quad[i % 4];
        double[] b = quad[(i + 1) % 4];
        return Math.hypot(b[0] - a[0], b[1] - a[1]);
    }

    private static double[][] scaled(double[][] quad, double by) {
        double[][] out = new double[4][];
        for (int i = 0; i < 4; i++) {
            out[i] = new double[] {quad[i][0] * by, quad[i][1] * by};
        }
        return out;
    }

    private static double inside(double part) {
        return Math.max(0, Math.min(1, part));
    }
}
