package tenterbook.imaging.cloth;

import java.util.Arrays;
import tenterbook.colour.palette.ColourMixture;
import tenterbook.colour.palette.LabRaster;

/**
 * Divides a picture into cloth and backdrop, beginning with cells that are surely backdrop: each side's colours are learnt from
 * it, the cheapest division by these colours and by the steps of colour between neighbours is cut, and so again (Rother,
 * Kolmogorov, Blake 2004, "GrabCut"). A shadow on the backdrop is backdrop.
 */
final class Cutting {
    private static final int BACKDROP_COLOURS = 6;
    private static final int CLOTH_COLOURS = 6;
    private static final int ROUNDS = 4;
    /** So much of the light falls on the backdrop in the shade of the cloth, in lightness; each deeper one is less likely. */
    private static final double[] SHADE = {1, 0.95, 0.9, 0.84};

    private static final double SHADED = 0.5;
    /** Mahalanobis distance, squared, that one in a thousand of a group's own colours exceeds (χ², three degrees). */
    static final double FOREIGN = 16;

    /** No colour speaks more strongly for a side than this, as a logarithm of likelihood. */
    private static final double MOST = 20;

    /** Price of parting two cells of one colour, and of any two, on the same scale. */
    private static final double PARTING = 8;

    private static final double LEAST_PARTING = 0.5;
    /** Of its eight neighbours, a cell has the price for half, and they the rest. */
    private static final int PARTINGS = GridCut.DIRECTIONS / 2;
    /** Prices are whole numbers. */
    private static final double SCALE = 100;

    private final LabRaster raster;
    private final boolean[] surely;
    /** By how much the parting of unlike neighbours becomes cheaper. */
    private final double contrast;
    /** Cells unlike the backdrop, from which each division begins. */
    private final boolean[] start;
    /** The prices that follow from {@link #start}. */
    private final int[] startPrices;
    /** For each cell and the one beside it in each second direction, how much alike they are, 0 to 1. */
    private final double[] alike;

    /** @param surely cells of the backdrop, at least one */
    Cutting(LabRaster raster, boolean[] surely) {
        this.raster = raster;
        this.surely = surely;
        this.contrast = contrast(raster);
        ColourMixture backdrop = ColourMixture.of(raster, surely, BACKDROP_COLOURS);
        start = new boolean[raster.size()];
        for (int cell = 0; cell < start.length; cell++) {
            start[cell] = !surely[cell] && foreign(backdrop, cell, FOREIGN);
        }
        boolean any = any(start);
        startPrices = any ? prices(start) : new int[0];
        alike = any ? alike() : new double[0];
    }

    private double[] alike() {
        GridCut grid = new GridCut(raster.width(), raster.height());
        double[] all = new double[PARTINGS * raster.size()];
        for (int cell = 0; cell < raster.size(); cell++) {
            for (int direction = 0; direction < GridCut.DIRECTIONS; direction += 2) {
                int next = grid.beside(cell, direction);
                if (next >= 0) {
                    all[PARTINGS * cell + direction / 2] = Math.exp(-contrast * step(raster, cell, next));
                }
            }
        }
        return all;
    }

    private static double contrast(LabRaster raster) {
        double sum = 0;
        int pairs = 0;
        for (int cell = 1; cell < raster.size(); cell++) {
            if (cell % raster.width() > 0) {
                sum += step(raster, cell - 1, cell);
                pairs++;
            }
        }
        return sum == 0 ? 1 : pairs / (2 * sum);
    }

    private static double step(LabRaster raster, int cell, int other) {
        return raster.squared(cell, raster.lightness(other), raster.a(other), raster.b(other));
    }

    /**
     * The cloth; empty where nothing in the picture differs from its backdrop.
     *
     * @param smoothness 1 as usual; a higher one makes a longer edge dearer
     */
    CellShape cloth(double smoothness) {
        boolean[] cloth = start.clone();
        for (int round = 0; round < ROUNDS && any(cloth); round++) {
            boolean[] next = cut(round == 0 ? startPrices : prices(cloth), smoothness);
            if (Arrays.equals(next, cloth)) {
                break;
            }
            cloth = next;
        }
        return CellShape.largest(raster.width(), raster.height(), cloth);
    }

    private static boolean any(boolean[] cloth) {
        for (boolean each : cloth) {
            if (each) {
                return true;
            }
        }
        return false;
    }

    /** The colours of what is not cloth. */
    ColourMixture outside(boolean[] cloth) {
        boolean[] outside = new boolean[cloth.length];
        for (int cell = 0; cell < cloth.length; cell++) {
            outside[cell] = !cloth[cell];
        }
        return ColourMixture.of(raster, outside, BACKDROP_COLOURS);
    }

    /** Whether a cell is farther than so much from any colour of the backdrop, in light or shade; see {@link ColourMixture#foreign}. */
    boolean foreign(ColourMixture backdrop, int cell, double beyond) {
        for (double shade : SHADE) {
            if (!backdrop.foreign(lit(cell, shade), raster.a(cell) / shade, raster.b(cell) / shade, beyond)) {
                return false;
            }
        }
        return true;
    }

    /** In less light a colour keeps its hue, and its L* + 16, a* and b* shrink alike (CIELAB above L* 8). */
    private double lit(int cell, double shade) {
        return (raster.lightness(cell) + 16) / shade - 16;
    }

    /** For each cell two prices, for being cloth and for being backdrop, by the colours of a division. */
    private int[] prices(boolean[] division) {
        ColourMixture backdrop = outside(division);
        ColourMixture cloth = ColourMixture.of(raster, division, CLOTH_COLOURS);
        int[] prices = new int[2 * raster.size()];
        double leastCost = backdrop.leastCost();
        for (int cell = 0; cell < raster.size(); cell++) {
            double asCloth = cloth.cost(raster.lightness(cell), raster.a(cell), raster.b(cell));
            double asBackdrop = asBackdrop(backdrop, leastCost, cell);
            double less = Math.min(asCloth, asBackdrop);
            prices[2 * cell] = surely[cell] ? price(10 * MOST) : price(Math.min(MOST, asCloth - less));
            prices[2 * cell + 1] = surely[cell] ? 0 : price(Math.min(MOST, asBackdrop - less));
        }
        return prices;
    }

    private boolean[] cut(int[] prices, double smoothness) {
        GridCut grid = new GridCut(raster.width(), raster.height());
        for (int cell = 0; cell < raster.size(); cell++) {
            grid.prices(cell, prices[2 * cell], prices[2 * cell + 1]);
            for (int direction = 0; direction < GridCut.DIRECTIONS; direction += 2) {
                if (grid.beside(cell, direction) >= 0) {
                    double same = alike[PARTINGS * cell + direction / 2];
                    double far = direction < 4 ? 1 : Math.sqrt(2);
                    grid.parting(cell, direction, price(smoothness * (PARTING * same + LEAST_PARTING) / far));
                }
            }
        }
        return grid.cut();
    }

    /** In the light, or in a shade, of which each deeper one costs more. */
    private double asBackdrop(ColourMixture backdrop, double leastCost, int cell) {
        double least = backdrop.cost(lit(cell, SHADE[0]), raster.a(cell), raster.b(cell));
        for (int i = 1; i < SHADE.length && least > leastCost + SHADED * (i + 1); i++) {
            double s = SHADE[i];
            double cost = backdrop.cost(lit(cell, s), raster.a(cell) / s, raster.b(cell) / s);
            least = Math.min(least, cost + SHADED * (i + 1));
        }
        return least;
    }

    private static int price(double cost) {
        return (int) (SCALE * cost);
    }
}
