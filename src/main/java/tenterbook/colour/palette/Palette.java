package tenterbook.colour.palette;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;

/**
 * The main colours of a picture: at most eight, each with its share of the area, the largest first.
 *
 * <p>Pixels are thinned to 40,000 and grouped in CIELAB; groups closer than ΔE00 4 are merged, groups under half a
 * percent join their nearest neighbour. The same picture always gives the same palette. The colours are those of the
 * picture, not of the cloth: an uncalibrated photograph gives uncalibrated colours.
 */
public final class Palette {
    /** No palette is longer. */
    public static final int MOST = 8;

    private static final int GROUPS = 16;
    private static final double ALIKE = 4;
    private static final double TINY = 0.005;

    private Palette() {}

    /**
     * The palette of a whole picture.
     *
     * @param argb one value per pixel, 0xAARRGGBB, sRGB, row by row from the top left; less than half opaque pixels are
     *     not counted
     * @return shares summing to 1 within 1e-9; empty if no pixel was counted
     * @throws IllegalArgumentException if the number of values is not width × height
     */
    public static List<PaletteColour> of(int[] argb, int width, int height) {
        return of(argb, width, height, Region.WHOLE);
    }

    /** The same for a part of the picture only; shares are parts of the region's area. */
    public static List<PaletteColour> of(int[] argb, int width, int height, Region region) {
        return of(LabSample.of(new Pixels(argb, width, height), region, PixelColour.SEEN));
    }

    /**
     * The same for what an outline encloses on a raster, whose cells are means over the cloth's threads. Cells at the outline,
     * which show what lies around it too, are left out.
     */
    public static List<PaletteColour> of(LabRaster raster, Region outline) {
        return of(raster, outline, List.of());
    }

    /** @param cards what lies on the cloth and does not count */
    public static List<PaletteColour> of(LabRaster raster, Region outline, List<Region> cards) {
        return of(LabSample.of(raster, ClothCells.within(raster, outline, cards), LabSample.MOST));
    }

    private static List<PaletteColour> of(LabSample sample) {
        if (sample.size == 0) {
            return List.of();
        }
        List<Group> groups = groups(Clusters.of(sample, Math.min(GROUPS, sample.size)));
        while (groups.size() > 1 && mergeClosest(groups, ALIKE)) {}
        while (groups.size() > 1 && foldSmallest(groups, TINY * sample.size)) {}
        while (groups.size() > MOST) {
            mergeClosest(groups, Double.MAX_VALUE);
        }
        return groups.stream()
                .sorted(Comparator.comparingDouble((Group group) -> -group.count)
                        .thenComparingDouble(group -> group.colour.lightness()))
                .map(group -> new PaletteColour(group.colour, group.count / sample.size))
                .toList();
    }

    private record Group(Lab colour, double count) {
        Group with(Group other) {
            double total = count + other.count;
            double t = other.count / total;
            return new Group(
                    new Lab(
                            colour.lightness() + t * (other.colour.lightness() - colour.lightness()),
                            colour.a() + t * (other.colour.a() - colour.a()),
                            colour.b() + t * (other.colour.b() - colour.b())),
                    total);
        }
    }

    private static List<Group> groups(Clusters clusters) {
        List<Group> groups = new ArrayList<>();
        for (int g = 0; g < clusters.counts.length; g++) {
            if (clusters.counts[g] > 0) {
                double[] m = clusters.means;
                groups.add(new Group(new Lab(m[3 * g], m[3 * g + 1], m[3 * g + 2]), clusters.counts[g]));
            }
        }
        return groups;
    }

    /** Merges the two most alike if they differ by less than {@code limit}; false if no two do. */
    private static boolean mergeClosest(List<Group> groups, double limit) {
        int first = -1;
        int second = -1;
        double least = limit;
        for (int i = 0; i < groups.size(); i++) {
            for (int j = i + 1; j < groups.size(); j++) {
                double difference = Ciede2000.difference(groups.get(i).colour, groups.get(j).colour);
                if (difference < least) {
                    least = difference;
                    first = i;
                    second = j;
                }
            }
        }
        if (first < 0) {
            return false;
        }
        groups.set(first, groups.get(first).with(groups.remove(second)));
        return true;
    }

    /** Joins the smallest group to its nearest neighbour if it has fewer pixels than {@code limit}. */
    private static boolean foldSmallest(List<Group> groups, double limit) {
        Group smallest =
                groups.stream().min(Comparator.comparingDouble(Group::count)).orElseThrow();
        if (smallest.count >= limit) {
            return false;
        }
        groups.remove(smallest);
        Group nearest = groups.stream()
                .min(Comparator.comparingDouble(group -> Ciede2000.difference(group.colour, smallest.colour)))
                .orElseThrow();
        groups.set(groups.indexOf(nearest), nearest.with(smallest));
        return true;
    }
}
