package tenterbook.sample;

import tenterbook.sample.SampleColour.Lab;

/** What the cloth hangs before or lies on. */
final class BackdropPaint {
    private static final double[] CREAM = {1.9, 2.6, 3};
    private static final double[][] CARPET_DYES = {{1, 0.5, 0.5}, {0.25, 0.4, 1.3}, {0.9, 1.2, 0.7}};

    private final Scene.Backdrop backdrop;
    private final Noise noise;
    private final Weave linen;
    private final double[] base;

    BackdropPaint(Scene.Backdrop backdrop, long seed, double pixelsPerMm) {
        this(backdrop, usual(backdrop), seed, pixelsPerMm);
    }

    /** @param colour of the whole, instead of the usual one */
    BackdropPaint(Scene.Backdrop backdrop, Lab colour, long seed, double pixelsPerMm) {
        this.backdrop = backdrop;
        this.noise = new Noise(seed + 900);
        this.linen = new Weave(ClothKind.HG, seed + 3, pixelsPerMm);
        this.base = SampleColour.linear(colour);
    }

    private static Lab usual(Scene.Backdrop backdrop) {
        return switch (backdrop) {
            case WALL -> new Lab(85, 0.8, 6);
            case LINEN -> new Lab(82, 1, 8.5);
            case PINE -> new Lab(71, 7, 21);
            case STONE -> new Lab(72, 0.6, 5);
            case GRASS -> new Lab(46, -22, 34);
            case DARK_FLOOR -> new Lab(27, 6, 9);
            case CARPET -> new Lab(55, 18, 22);
        };
    }

    double[] base() {
        return base.clone();
    }

    /** Linear sRGB at a place in mm. */
    void at(double x, double y, double[] rgb) {
        double tone = switch (backdrop) {
            case WALL -> limewash(x, y);
            case LINEN -> 1 + 0.8 * (linen.relief(x, y) - 1) + 0.045 * noise.octaves(x / 260, y / 210, 3);
            case PINE, DARK_FLOOR -> planks(x, y);
            case STONE -> flags(x, y);
            case GRASS -> blades(x, y);
            case CARPET -> 1 + 0.12 * noise.octaves(x / 3, y / 3, 2);
        };
        double warm = 0.02 * noise.octaves(x / 300 + 40, y / 300, 2);
        rgb[0] = base[0] * tone * (1 + warm);
        rgb[1] = base[1] * tone;
        rgb[2] = base[2] * tone * (1 - 1.4 * warm);
        if (backdrop == Scene.Backdrop.CARPET) {
            checks(x, y, rgb);
        }
    }

    private double limewash(double x, double y) {
        double brush = noise.octaves(x / 60 + 0.5 * noise.at(x / 90, y / 90), y / 22, 3);
        return 1
                + 0.05 * noise.octaves(x / 320, y / 320, 4)
                + 0.022 * brush
                + 0.018 * noise.octaves(x / 3.2, y / 3.2, 2);
    }

    private double planks(double x, double y) {
        double board = 150;
        int k = (int) Math.floor(y / board);
        double in = y - k * board;
        double shift = k * 371.3;
        double bend = 9 * noise.at((x + shift) / 260, k * 3.3);
        double rings = Math.sin((in + bend + 26 * noise.at((x + shift) / 420, in / 130 + k * 5)) * 0.42);
        double fibre = noise.octaves((x + shift) / 90, in / 1.6, 2);
        double tone = 0.97 + 0.05 * noise.at(k * 1.7, 0.5) + 0.055 * rings + 0.05 * fibre;
        double gap = Math.min(in, board - in);
        return tone * (1 - 0.72 * Math.exp(-gap * gap / 2.2) - 0.08 * Math.exp(-gap / 6));
    }

    /** Four colours, in squares with a lozenge in each. */
    private static void checks(double x, double y, double[] rgb) {
        int square = Math.floorMod((int) Math.floor(x / 90) + 2 * (int) Math.floor(y / 90), 3);
        double u = Math.abs(Math.floorMod((int) x, 90) - 45);
        double v = Math.abs(Math.floorMod((int) y, 90) - 45);
        double[] dye = u + v < 30 ? CREAM : CARPET_DYES[square];
        for (int k = 0; k < 3; k++) {
            rgb[k] *= dye[k];
        }
    }

    /** Light blades over dark gaps, in tufts. */
    private double blades(double x, double y) {
        double lean = 4 * noise.at(x / 40, y / 40);
        double blade = noise.octaves((x + lean) / 3.1, y / 11, 3);
        double tuft = noise.octaves(x / 75, y / 75, 3);
        return Math.max(0.25, 1 + 0.55 * blade + 0.3 * tuft);
    }

    private double flags(double x, double y) {
        double wx = x + 10 * noise.at(x / 120, y / 120);
        double wy = y + 10 * noise.at(x / 130 + 20, y / 130);
        int row = (int) Math.floor(wy / 340);
        double cx = wx + (row & 1) * 210;
        double gx = Math.abs(cx - 430 * Math.rint(cx / 430));
        double gy = Math.abs(wy - 340 * Math.rint(wy / 340));
        double joint = Math.exp(-Math.pow(Math.min(gx, gy) / 4, 2));
        double tint = noise.at(Math.rint(cx / 430 - 0.5) * 1.9, row * 2.3);
        return (1 + 0.06 * tint + 0.07 * noise.octaves(x / 70, y / 70, 4) + 0.05 * noise.octaves(x / 2.6, y / 2.6, 2))
                * (1 - 0.3 * joint);
    }
}
