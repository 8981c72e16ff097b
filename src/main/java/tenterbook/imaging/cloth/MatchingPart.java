package tenterbook.imaging.cloth;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.palette.LabRaster;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.target.Correction;

/**
 * The part of a picture that has a colour asked for. Where a main colour of the cloth is near enough, as in the search, it is the
 * cells nearer to such a main colour than to the others, in CIELAB; else the cells that are near enough themselves.
 */
public final class MatchingPart {
    /** Cells along the longer side, up to twice as many. */
    public static final int LONG_EDGE = 160;

    /** Parts and holes of less than so much of the picture are left out, since at the size of a result they would be specks. */
    private static final double SPECK = 0.003;

    /** A cell counts with so many of the nine about it, itself among them: single threads draw no outline. */
    private static final int MOST_OF_NINE = 5;

    private final LabRaster raster;
    private boolean[] inside;

    private MatchingPart(LabRaster raster) {
        this.raster = raster;
        this.inside = new boolean[raster.size()];
    }

    /**
     * @param cloth its outline; null for the whole picture
     * @param palette main colours of the cloth as the picture has them
     * @param correction of the picture, for cells that are compared themselves
     * @param within greatest ΔE00
     */
    public static MatchingPart of(
            LabRaster raster,
            @Nullable Region cloth,
            List<PaletteColour> palette,
            Correction correction,
            List<Lab> asked,
            double within) {
        MatchingPart part = new MatchingPart(raster);
        boolean[] near = new boolean[palette.size()];
        boolean any = false;
        for (int i = 0; i < near.length; i++) {
            near[i] = near(palette.get(i).colour(), asked, within);
            any |= near[i];
        }
        boolean[] counts = new boolean[raster.size()];
        for (int cell = 0; cell < counts.length; cell++) {
            counts[cell] = cloth == null
                    || cloth.contains(
                            raster.across(cell % raster.width() + 0.5), raster.down(cell / raster.width() + 0.5));
            part.inside[cell] = counts[cell]
                    && (any
                            ? near[nearest(raster, cell, palette)]
                            : near(
                                    correction
                                            .apply(LinearRgb.of(raster.lab(cell)))
                                            .lab(),
                                    asked,
                                    within));
        }
        part.smooth(counts);
        part.smooth(counts);
        part.turnSpecks(true, counts);
        part.turnSpecks(false, counts);
        return part;
    }

    private static boolean near(Lab colour, List<Lab> asked, double within) {
        return asked.stream().anyMatch(each -> Ciede2000.difference(each, colour) <= within);
    }

    private static int nearest(LabRaster raster, int cell, List<PaletteColour> palette) {
        int nearest = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < palette.size(); i++) {
            Lab colour = palette.get(i).colour();
            double distance = raster.squared(cell, colour.lightness(), colour.a(), colour.b());
            if (distance < least) {
                least = distance;
                nearest = i;
            }
        }
        return nearest;
    }

    private void smooth(boolean[] counts) {
        boolean[] smoother = new boolean[inside.length];
        for (int y = 0; y < raster.height(); y++) {
            for (int x = 0; x < raster.width(); x++) {
                int around = 0;
                for (int i = 0; i < 9; i++) {
                    around += at(x + i % 3 - 1, y + i / 3 - 1) ? 1 : 0;
                }
                int cell = y * raster.width() + x;
                smoother[cell] = counts[cell] && around >= MOST_OF_NINE;
            }
        }
        inside = smoother;
    }

    /** Turns connected groups of too few cells that are inside, or that are not, into the other. Only cells that count change. */
    private void turnSpecks(boolean which, boolean[] counts) {
        boolean[] seen = new boolean[inside.length];
        int[] group = new int[inside.length];
        int width = raster.width();
        for (int start = 0; start < inside.length; start++) {
            if (seen[start] || inside[start] != which) {
                continue;
            }
            int size = 1;
            group[0] = start;
            seen[start] = true;
            for (int done = 0; done < size; done++) {
                int cell = group[done];
                int x = cell % width;
                int[] beside = {
                    x > 0 ? cell - 1 : -1, x < width - 1 ? cell + 1 : -1, cell - width, cell + width,
                };
                for (int next : beside) {
                    if (next >= 0 && next < inside.length && !seen[next] && inside[next] == which) {
                        seen[next] = true;
                        group[size++] = next;
                    }
                }
            }
            for (int i = 0; i < size && size < SPECK * inside.length; i++) {
                inside[group[i]] = !which && counts[group[i]];
            }
        }
    }

    private boolean at(int x, int y) {
        return x >= 0 && y >= 0 && x < raster.width() && y < raster.height() && inside[y * raster.width() + x];
    }

    /** Its part of the picture, 0 to 1. */
    public double share() {
        int cells = 0;
        for (boolean each : inside) {
            cells += each ? 1 : 0;
        }
        return (double) cells / inside.length;
    }

    /** Whether a place of the picture belongs to it; in parts of width and height. */
    public boolean contains(double across, double down) {
        return at((int) (across / raster.across(1)), (int) (down / raster.down(1)));
    }

    /** Its edge as an SVG path; the picture is {@code 1 / across(1)} wide and {@code 1 / down(1)} high in its units. */
    private String path() {
        StringBuilder path = new StringBuilder();
        for (int y = 0; y <= raster.height(); y++) {
            int from = -1;
            for (int x = 0; x <= raster.width(); x++) {
                boolean edge = x < raster.width() && at(x, y - 1) != at(x, y);
                if (edge && from < 0) {
                    from = x;
                } else if (!edge && from >= 0) {
                    path.append('M')
                            .append(from)
                            .append(' ')
                            .append(y)
                            .append('h')
                            .append(x - from);
                    from = -1;
                }
            }
        }
        for (int x = 0; x <= raster.width(); x++) {
            int from = -1;
            for (int y = 0; y <= raster.height(); y++) {
                boolean edge = y < raster.height() && at(x - 1, y) != at(x, y);
                if (edge && from < 0) {
                    from = y;
                } else if (!edge && from >= 0) {
                    path.append('M')
                            .append(x)
                            .append(' ')
                            .append(from)
                            .append('v')
                            .append(y - from);
                    from = -1;
                }
            }
        }
        return path.toString();
    }

    /**
     * Edges alone, as an SVG picture of the same proportions as the picture: of the first part with a full line, of the others with
     * broken ones.
     *
     * @param parts one or more, of the same picture
     */
    public static String svg(List<MatchingPart> parts) {
        LabRaster raster = parts.get(0).raster;
        StringBuilder svg = new StringBuilder(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%1$.0f\" height=\"%2$.0f\" viewBox=\"0 0 %1$.3f %2$.3f\""
                        + " fill=\"none\" stroke-linecap=\"square\">",
                1 / raster.across(1),
                1 / raster.down(1)));
        for (int i = 0; i < parts.size(); i++) {
            String path = parts.get(i).path();
            svg.append("<path stroke=\"#221d17\" stroke-width=\"2.6\" d=\"").append(path);
            svg.append("\"/><path stroke=\"#fff\" stroke-width=\"1.1\"");
            svg.append(i == 0 ? "" : " stroke-linecap=\"butt\" stroke-dasharray=\"2 2\"");
            svg.append(" d=\"").append(path).append("\"/>");
        }
        return svg.append("</svg>").toString();
    }
}
