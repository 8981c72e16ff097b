package tenterbook.colour.palette;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tenterbook.colour.space.Lab;

/**
 * Proposes the colour areas of a cloth in a picture: ground, resist and local colours.
 *
 * <p>Cells inside the cloth's outline are grouped in CIELAB and cleaned of strays. Shares are of the cloth's visible face,
 * without its outermost rim. Any proposal can be replaced by a {@link Region} drawn by hand.
 */
public final class ClothAreaProposal {
    private static final int LONG_EDGE = 320;
    private static final double LEAST_CLOTH = 0.02;
    private static final double CLEARLY_LIGHTER = 12;

    private ClothAreaProposal() {}

    /**
     * The areas, the largest first; empty where the outline encloses too little.
     *
     * @param outline of the cloth
     * @param leaveOut the card and whatever else lies on the cloth
     */
    public static List<ClothArea> find(Pixels picture, Region outline, List<Region> leaveOut) {
        LabRaster raster = LabRaster.of(picture, LONG_EDGE);
        boolean[] cloth = ClothCells.within(raster, outline, leaveOut);
        int cells = 0;
        for (boolean c : cloth) {
            cells += c ? 1 : 0;
        }
        if (cells == 0 || cells < LEAST_CLOTH * raster.size()) {
            return List.of();
        }
        return areas(raster, new ColourMap(raster, cloth), cells);
    }

    private record Raw(double share, Lab mean, Region sample) {}

    private static List<ClothArea> areas(LabRaster raster, ColourMap map, int cells) {
        List<Raw> raws = new ArrayList<>();
        for (int g = 0; g < map.colours.size(); g++) {
            int count = 0;
            double[] inside = new double[4];
            double[] all = new double[4];
            for (int cell = 0; cell < map.label.length; cell++) {
                if (map.label[cell] == g) {
                    count++;
                    add(raster, cell, all);
                    if (interior(raster, map.label, cell)) {
                        add(raster, cell, inside);
                    }
                }
            }
            if (count > 0) {
                double[] sum = inside[3] >= Math.max(4, count / 20.0) ? inside : all;
                Lab mean = new Lab(sum[0] / sum[3], sum[1] / sum[3], sum[2] / sum[3]);
                raws.add(new Raw((double) count / cells, mean, InnerRectangle.of(raster, map.label, g)));
            }
        }
        raws.sort(Comparator.comparingDouble(Raw::share).reversed());
        return named(raws);
    }

    private static List<ClothArea> named(List<Raw> raws) {
        Raw lightest = raws.stream()
                .max(Comparator.comparingDouble(raw -> raw.mean.lightness()))
                .orElseThrow();
        Raw ground = raws.get(0) == lightest && raws.size() > 1 && resisted(raws, lightest) ? raws.get(1) : raws.get(0);
        return raws.stream()
                .map(raw -> new ClothArea(part(raw, ground, lightest), raw.share, raw.mean, raw.sample))
                .toList();
    }

    private static ClothArea.Part part(Raw raw, Raw ground, Raw lightest) {
        if (raw == ground) {
            return ClothArea.Part.GROUND;
        }
        boolean resist = raw == lightest && raw.mean.lightness() > ground.mean.lightness() + CLEARLY_LIGHTER;
        return resist ? ClothArea.Part.RESIST : ClothArea.Part.LOCAL;
    }

    /** Whether the largest area is rather undyed cloth: pale, nearly without hue, beside something much darker. */
    private static boolean resisted(List<Raw> raws, Raw lightest) {
        return lightest.mean.lightness() > 75
                && lightest.mean.chroma() < 16
                && raws.get(1).mean.lightness() < lightest.mean.lightness() - CLEARLY_LIGHTER;
    }

    private static boolean interior(LabRaster raster, int[] label, int cell) {
        for (int next : ClothCells.beside(raster, cell)) {
            if (next < 0 || label[next] != label[cell]) {
                return false;
            }
        }
        return true;
    }

    private static void add(LabRaster raster, int cell, double[] sum) {
        sum[0] += raster.lightness(cell);
        sum[1] += raster.a(cell);
        sum[2] += raster.b(cell);
        sum[3]++;
    }
}
