package tenterbook.colour.space;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import tenterbook.words.Message;

/**
 * The part of CIELAB (D65, 2°) that {@link ColourWords} gives one name, as limits of lightness, chroma and hue angle. Found by asking it
 * for the name of each cell between its limits, so that there is one definition of the names.
 *
 * @param lightness least and greatest L*, 0 to 100
 * @param chroma least and greatest C*, 0 to {@value #OPEN}; the latter stands for any greater one too
 * @param hue where the arc of hue angles begins and ends, in degrees; it passes 0 where the end is the lesser, and 0 to 360 is every hue
 * @param whole whether all that lies within these limits has the name; else other names take a part of it
 * @param centre the mean of all of it, chroma above {@value #OPEN} left out; where that has another name, the middle of the nearest cell
 */
public record ColourRegion(Ends lightness, Ends chroma, Ends hue, boolean whole, Lab centre) {
    /** Above this chroma no name ends. */
    public static final int OPEN = 60;

    private static final int CIRCLE = 360;

    /** Where names may end; {@code ColourRegionTest} finds one that is missing. */
    private static final int[] LIGHTNESS = {0, 12, 20, 35, 36, 60, 62, 68, 78, 80, 85, 96, 100};

    private static final int[] CHROMA = {0, 3, 5, 8, 12, 14, 24, 32, 45, 55, OPEN};
    private static final int[] HUE = {
        0, 16, 20, 40, 42, 45, 55, 62, 74, 88, 90, 100, 106, 122, 125, 168, 205, 235, 286, 309, 332, 335, 350, CIRCLE
    };

    private static final Map<String, ColourRegion> BY_NAME = all();

    /** A range of whole numbers, both ends included. */
    public record Ends(int from, int to) {
        private int length() {
            return to - from;
        }

        private double middle() {
            return (from + to) / 2.0;
        }

        private Ends with(Ends other) {
            return new Ends(Math.min(from, other.from), Math.max(to, other.to));
        }
    }

    /** By the name in English, as {@link ColourWords#of} gives it. */
    public static Map<String, ColourRegion> byName() {
        return BY_NAME;
    }

    public boolean everyHue() {
        return hue.length() == CIRCLE;
    }

    private static Map<String, ColourRegion> all() {
        Map<String, Cells> cells = new HashMap<>();
        for (int l = 1; l < LIGHTNESS.length; l++) {
            for (int c = 1; c < CHROMA.length; c++) {
                for (int h = 1; h < HUE.length; h++) {
                    Cell cell = new Cell(
                            new Ends(LIGHTNESS[l - 1], LIGHTNESS[l]),
                            new Ends(CHROMA[c - 1], CHROMA[c]),
                            new Ends(HUE[h - 1], HUE[h]));
                    cells.computeIfAbsent(cell.code(), of -> new Cells()).add(cell);
                }
            }
        }
        Map<String, ColourRegion> regions = new HashMap<>();
        cells.forEach(
                (code, of) -> regions.put(Message.of("colour.name." + code).inEnglish(), of.region(code)));
        return Map.copyOf(regions);
    }

    private record Cell(Ends lightness, Ends chroma, Ends hue) {
        String code() {
            return ColourWords.code(lightness.middle(), chroma.middle(), hue.middle());
        }

        Lab middle() {
            double angle = Math.toRadians(hue.middle());
            return new Lab(lightness.middle(), chroma.middle() * Math.cos(angle), chroma.middle() * Math.sin(angle));
        }

        long units() {
            return (long) lightness.length() * chroma.length() * hue.length();
        }

        double off(Lab colour) {
            Lab middle = middle();
            return Math.hypot(
                    middle.lightness() - colour.lightness(),
                    Math.hypot(middle.a() - colour.a(), middle.b() - colour.b()));
        }
    }

    /** The cells of one name. */
    private static final class Cells {
        private final List<Cell> cells = new ArrayList<>();

        void add(Cell cell) {
            cells.add(cell);
        }

        ColourRegion region(String code) {
            Ends lightness =
                    cells.stream().map(Cell::lightness).reduce(Ends::with).orElseThrow();
            Ends chroma = cells.stream().map(Cell::chroma).reduce(Ends::with).orElseThrow();
            Ends hue = arc();
            long degrees = Math.floorMod(hue.length() - 1, CIRCLE) + 1L;
            boolean whole = units() == lightness.length() * chroma.length() * degrees;
            return new ColourRegion(lightness, chroma, hue, whole, centre(code));
        }

        private long units() {
            return cells.stream().mapToLong(Cell::units).sum();
        }

        private Lab centre(String code) {
            Lab mean = new Lab(mean(Lab::lightness), mean(Lab::a), mean(Lab::b));
            return ColourWords.code(mean.lightness(), mean.chroma(), mean.hueDegrees())
                            .equals(code)
                    ? mean
                    : cells.stream()
                            .min(Comparator.comparingDouble(cell -> cell.off(mean)))
                            .orElseThrow()
                            .middle();
        }

        private double mean(ToDoubleFunction<Lab> of) {
            return cells.stream()
                            .mapToDouble(cell -> cell.units() * of.applyAsDouble(cell.middle()))
                            .sum()
                    / units();
        }

        /** The shortest arc with all its hues: what is left of the circle without the longest gap. */
        private Ends arc() {
            boolean[] hues = new boolean[CIRCLE];
            cells.forEach(
                    cell -> Arrays.fill(hues, cell.hue().from(), cell.hue().to(), true));
            int longest = 0;
            int after = 0;
            int gap = 0;
            for (int degree = 0; degree < 2 * CIRCLE; degree++) {
                gap = hues[degree % CIRCLE] ? 0 : gap + 1;
                if (gap > longest) {
                    longest = gap;
                    after = degree + 1;
                }
            }
            return longest == 0
                    ? new Ends(0, CIRCLE)
                    : new Ends(after % CIRCLE, Math.floorMod(after - longest - 1, CIRCLE) + 1);
        }
    }
}
