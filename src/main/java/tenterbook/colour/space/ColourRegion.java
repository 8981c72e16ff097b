package tenterbook.colour.space;

import java.util.HashMap;
import java.util.Map;
import java.util.stream.IntStream;
import tenterbook.words.Message;

/**
 * The part of CIELAB (D65, 2°) that {@link ColourWords} gives one name, as limits of lightness, chroma and hue angle. Found by asking it
 * for the name of each cell of one unit of L*, C* and degree, so that there is one definition of the names.
 *
 * @param lightness least and greatest L*, 0 to 100
 * @param chroma least and greatest C*, 0 to {@value #OPEN}; the latter stands for any greater one too
 * @param hue where the arc of hue angles begins and ends, in degrees; it passes 0 where the end is the lesser, and 0 to 360 is every hue
 * @param whole whether all that lies within these limits has the name; else other names take a part of it
 * @param centre the cell of the name that is nearest to the mean of all, those of a chroma above {@value #OPEN} left out
 */
public record ColourRegion(Ends lightness, Ends chroma, Ends hue, boolean whole, Lab centre) {
    /** Above this chroma no name ends. */
    public static final int OPEN = 60;

    private static final int LIGHTEST = 100;
    private static final int CIRCLE = 360;

    /** A range of whole numbers, both ends included. */
    public record Ends(int from, int to) {}

    /** The regions by their names in English, found once: two million cells, about 0.2 s. */
    private static final class Found {
        static final Map<String, ColourRegion> BY_NAME = all();
    }

    private static Map<String, ColourRegion> all() {
        Map<String, Cells> cells = new HashMap<>();
        for (int lightness = 0; lightness < LIGHTEST; lightness++) {
            for (int chroma = 0; chroma < OPEN; chroma++) {
                for (int hue = 0; hue < CIRCLE; hue++) {
                    String code = ColourWords.code(lightness + 0.5, chroma + 0.5, hue + 0.5);
                    cells.computeIfAbsent(code, of -> new Cells()).add(lightness, chroma, hue);
                }
            }
        }
        Map<String, ColourRegion> regions = new HashMap<>();
        cells.forEach(
                (code, of) -> regions.put(Message.of("colour.name." + code).inEnglish(), of.region(code)));
        return Map.copyOf(regions);
    }

    /** By the name in English, as {@link ColourWords#of} gives it. */
    public static Map<String, ColourRegion> byName() {
        return Found.BY_NAME;
    }

    public boolean everyHue() {
        return hue.to - hue.from == CIRCLE;
    }

    /** The cells of one name. */
    private static final class Cells {
        private static final double[] COSINES = IntStream.range(0, CIRCLE)
                .mapToDouble(hue -> Math.cos(Math.toRadians(hue + 0.5)))
                .toArray();
        private static final double[] SINES = IntStream.range(0, CIRCLE)
                .mapToDouble(hue -> Math.sin(Math.toRadians(hue + 0.5)))
                .toArray();

        private final boolean[] hues = new boolean[CIRCLE];
        private int darkest = LIGHTEST;
        private int lightest;
        private int dullest = OPEN;
        private int strongest;
        private long count;
        private double lightness;
        private double a;
        private double b;

        void add(int fromLightness, int fromChroma, int fromHue) {
            darkest = Math.min(darkest, fromLightness);
            lightest = Math.max(lightest, fromLightness + 1);
            dullest = Math.min(dullest, fromChroma);
            strongest = Math.max(strongest, fromChroma + 1);
            hues[fromHue] = true;
            count++;
            lightness += fromLightness + 0.5;
            a += (fromChroma + 0.5) * COSINES[fromHue];
            b += (fromChroma + 0.5) * SINES[fromHue];
        }

        ColourRegion region(String code) {
            Ends hue = arc();
            long degrees = Math.floorMod(hue.to - hue.from - 1, CIRCLE) + 1L;
            return new ColourRegion(
                    new Ends(darkest, lightest),
                    new Ends(dullest, strongest),
                    hue,
                    count == (lightest - darkest) * (strongest - dullest) * degrees,
                    centre(code));
        }

        private Lab centre(String code) {
            Lab mean = new Lab(lightness / count, a / count, b / count);
            if (ColourWords.code(mean.lightness(), mean.chroma(), mean.hueDegrees())
                    .equals(code)) {
                return mean;
            }
            Lab nearest = null;
            for (int light = darkest; light < lightest; light++) {
                for (int chroma = dullest; chroma < strongest; chroma++) {
                    for (int hue = 0; hue < CIRCLE; hue++) {
                        if (hues[hue]
                                && ColourWords.code(light + 0.5, chroma + 0.5, hue + 0.5)
                                        .equals(code)) {
                            Lab cell = cell(light, chroma, hue);
                            nearest =
                                    nearest == null || distance(cell, mean) < distance(nearest, mean) ? cell : nearest;
                        }
                    }
                }
            }
            return nearest;
        }

        private static Lab cell(int lightness, int chroma, int hue) {
            return new Lab(lightness + 0.5, (chroma + 0.5) * COSINES[hue], (chroma + 0.5) * SINES[hue]);
        }

        private static double distance(Lab one, Lab other) {
            return Math.hypot(
                    one.lightness() - other.lightness(), Math.hypot(one.a() - other.a(), one.b() - other.b()));
        }

        /** The shortest arc with all its hues: what is left of the circle without the longest gap. */
        private Ends arc() {
            int longest = 0;
            int after = 0;
            int gap = 0;
            for (int degree = 0; degree < 2 * CIRCLE; degree++) {
                gap = hues[degree % CIRCLE] ? 0 : gap + 1;
                if (gap > longest && gap < CIRCLE) {
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
