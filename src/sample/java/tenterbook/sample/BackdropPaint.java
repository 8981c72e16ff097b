package tenterbook.sample;

import tenterbook.sample.SampleColour.Lab;

/** What the cloth hangs before or lies on. */
final class BackdropPaint {
    private final Scene.Backdrop backdrop;
    private final Noise noise;
    private final Weave linen;
    private final double[] base;

    BackdropPaint(Scene.Backdrop backdrop, long seed, double pixelsPerMm) {
        this.backdrop = backdrop;
        this.noise = new Noise(seed + 900);
        this.linen = new Weave(ClothKind.HG, seed + 3, pixelsPerMm);
        this.base = SampleColour.linear(
                switch (backdrop) {
                    case WALL -> new Lab(85, 0.8, 6);
                    case LINEN -> new Lab(82, 1, 8.5);
                    case PINE -> new Lab(71, 7, 21);
                    case STONE -> new Lab(72, 0.6, 5);
                });
    }

    double[] base() {
        return base.clone();
    }

    /** Linear sRGB at a place in mm. */
    void at(double x, double y, double[] rgb) {
        double tone = switch (backdrop) {
            case WALL -> limewash(x, y);
            case LINEN -> 1 + 0.8 * (linen.relief(x, y) - 1) + 0.045 * noise.octaves(x / 260, y / 210, 3);
            case PINE -> planks(x, y);
            case STONE -> flags(x, y);
        };
        double warm = 0.02 * noise.octaves(x / 300 + 40, y / 300, 2);
        rgb[0] = base[0] * tone * (1 + warm);
        rgb[1] = base[1] * tone;
        rgb[2] = base[2] * tone * (1 - 1.4 * warm);
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
