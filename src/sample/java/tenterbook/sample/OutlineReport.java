package tenterbook.sample;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tenterbook.colour.palette.Region;
import tenterbook.imaging.cloth.ClothFinder;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.imaging.cloth.ClothOutline.Edge;

/**
 * How well the cloth is found in rendered scenes whose true outline is known, kind by kind. The finder's limits were fixed on
 * the seeds 1 to 20; figures are those of other seeds, and of rendered pictures only.
 */
public final class OutlineReport {
    private static final double AIM = 0.95;

    private OutlineReport() {}

    /** @param arguments first and last seed; 101 and 120 where there are none */
    public static void main(String[] arguments) {
        int first = arguments.length == 2 ? Integer.parseInt(arguments[0]) : 101;
        int last = arguments.length == 2 ? Integer.parseInt(arguments[1]) : 120;
        System.out.printf("rendered scenes, seeds %d to %d; overlap is intersection over union%n", first, last);
        System.out.printf(
                "%-26s %6s %6s %6s %6s %7s %7s %6s  %s%n",
                "kind", "scenes", "found", "right", "wrong", "least", "median", "ms", "edge not found because");
        for (OutlineScene.Kind kind : OutlineScene.Kind.values()) {
            line(kind, first, last);
        }
    }

    private static void line(OutlineScene.Kind kind, int first, int last) {
        List<Double> overlaps = new ArrayList<>();
        Map<Edge, Integer> doubts = new TreeMap<>();
        long nanos = 0;
        for (int seed = first; seed <= last; seed++) {
            OutlineScene.Drawn drawn = OutlineScene.draw(kind, seed);
            var pixels = drawn.pixels();
            long before = System.nanoTime();
            ClothOutline outline = ClothFinder.find(pixels);
            nanos += System.nanoTime() - before;
            if (outline.edge().found()) {
                overlaps.add(drawn.overlap(new Region(outline.corners())));
            } else {
                doubts.merge(outline.edge(), 1, Integer::sum);
            }
        }
        Collections.sort(overlaps);
        long right = overlaps.stream().filter(overlap -> overlap >= AIM).count();
        System.out.printf(
                "%-26s %6d %6d %6d %6d %7.3f %7.3f %6d  %s%n",
                kind,
                last - first + 1,
                overlaps.size(),
                right,
                overlaps.size() - right,
                overlaps.isEmpty() ? Double.NaN : overlaps.get(0),
                overlaps.isEmpty() ? Double.NaN : overlaps.get(overlaps.size() / 2),
                nanos / (last - first + 1) / 1_000_000,
                doubts.isEmpty() ? "" : doubts);
    }
}
