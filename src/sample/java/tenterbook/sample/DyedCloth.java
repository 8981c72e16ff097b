package tenterbook.sample;

import java.util.Random;
import tenterbook.sample.Scene.Fault;
import tenterbook.sample.Scene.LocalColour;
import tenterbook.sample.Scene.View;

/**
 * The dyeing itself: how much ground and local colour each place of the opened cloth took up. Coordinates are mm from the
 * upper left corner of the first panel; the hem lies outside the boards and is dyed through.
 */
final class DyedCloth {
    static final double MARGIN_MM = 13;

    final Scene scene;
    final BoardFields board;
    final double widthMm;
    final double heightMm;
    private final double panelWidth;
    private final double panelHeight;
    private final double feather;
    private final Noise noise;
    private final double[] shiftX;
    private final double[] shiftY;
    private final double[] depth;
    private final int[] localOfHole;

    /** @param softMm how far the picture itself blurs, in mm of cloth, 0 or more */
    DyedCloth(Scene scene, double softMm) {
        this.scene = scene;
        this.feather = Math.hypot(scene.cloth().featherMm, softMm);
        this.board = BoardFields.of(scene.boardState());
        this.panelWidth = board.motif.widthMm();
        this.panelHeight = board.motif.heightMm();
        this.widthMm = panelWidth * scene.across();
        this.heightMm = panelHeight * scene.down();
        this.noise = new Noise(scene.clothSeed());
        int n = scene.across() * scene.down();
        this.shiftX = new double[n];
        this.shiftY = new double[n];
        this.depth = layerDepths(n);
        Random random = new Random(scene.clothSeed() * 31 + 5);
        for (int i = 0; i < n; i++) {
            shiftX[i] = random.nextGaussian() * 0.7;
            shiftY[i] = random.nextGaussian() * 0.7;
        }
        this.localOfHole = new int[board.motif.holes().size()];
        for (int h = 0; h < localOfHole.length; h++) {
            localOfHole[h] = -1;
            for (int k = 0; k < scene.local().size(); k++) {
                LocalColour colour = scene.local().get(k);
                if (h + 1 >= colour.first() && h + 1 <= colour.last()) {
                    localOfHole[h] = k;
                }
            }
        }
    }

    /** Take-up by layer: the outer layers meet fresh bath, the inner ones less; the average is 1. */
    private double[] layerDepths(int n) {
        double loss = scene.faults().contains(Fault.PALE_INNER) ? 0.62 : 0.15;
        double[] take = new double[n];
        double sum = 0;
        for (int k = 0; k < n; k++) {
            double inward = n < 3 ? 0 : Math.min(k, n - 1 - k) / Math.floor((n - 1) / 2.0);
            take[k] = 1 - loss * inward + 0.025 * Math.sin(k * 2.1 + scene.clothSeed());
            sum += take[k];
        }
        for (int k = 0; k < n; k++) {
            take[k] *= n / sum;
        }
        return take;
    }

    /** What one place of the cloth took up: 1 is the stated depth of the colour. */
    static final class Take {
        double ground;
        double local;
        int localIndex;
        /** mm to the nearest fold, signed: negative left of or above it. */
        double foldX;

        double foldY;
        /** mm into the channel; negative under a land. */
        double channel;
    }

    void at(double xMm, double yMm, Take take) {
        double x = scene.view() == View.BACK ? widthMm - xMm : xMm;
        double y = yMm;
        int column = (int) Math.max(0, Math.min(scene.across() - 1, Math.floor(x / panelWidth)));
        int row = (int) Math.max(0, Math.min(scene.down() - 1, Math.floor(y / panelHeight)));
        int panel = row * scene.across() + column;
        double px = x - column * panelWidth;
        double py = y - row * panelHeight;
        double u = column % 2 == 0 ? px : panelWidth - px;
        boolean turned = scene.faults().contains(Fault.FLIPPED_END) && column == scene.across() - 1;
        double v = (row % 2 == 0) != turned ? py : panelHeight - py;
        double uneven = noise.octaves(x / 9 + panel * 13.7, y / 9, 3);
        double wide = noise.at(x / 34, y / 34 + panel * 7.1);
        double mu = u + shiftX[panel] + 0.55 * uneven;
        double mv = v + shiftY[panel] + 0.55 * noise.at(y / 7 + 91, x / 7);
        double d = board.channelDepth(mu, mv);
        double outside = Math.max(Math.max(-x, x - widthMm), Math.max(-y, y - heightMm));
        if (outside > -0.8) {
            d = Math.max(d, outside * 2 + 1.6 + uneven);
        }
        double creep = 0.25 + 0.45 * wide + 0.3 * uneven + leak(u, v, x, y);
        double s = (d + creep) / feather;
        double ground = smooth((s + 1) / 2);
        ground *= 0.86 + 0.2 * board.openness(mu, mv);
        ground += 0.17 * Math.exp(-Math.pow((d + creep - 1.1) / 0.75, 2));
        if (d + creep < 0) {
            ground += 0.13
                    * Math.exp((d + creep) / (1.1 + feather + 0.7 * Math.max(0, wide)))
                    * Math.max(0.15, 1 + 1.3 * wide + 0.5 * uneven);
        }
        ground += (0.022 + 0.02 * Math.max(0, noise.at(x / 60 + 5, y / 60))) * (1 - smooth(s));
        if (scene.faults().contains(Fault.BOARD_BLEED)) {
            ground += bleed(u, v) * (1 - smooth(s));
        }
        take.channel = d + creep;
        localColour(mu, mv, uneven, take);
        if (take.localIndex >= 0) {
            ground *= 1 - 0.93 * Math.min(1, take.local * 1.4);
        }
        double bath = 1
                + 0.14 * noise.octaves(x / 170 + 40, y / 170, 4)
                + 0.06 * noise.at(x / 7, y / 150 + 20)
                + 0.065 * noise.octaves(x / 1.4, y / 1.7, 2)
                + 0.095 * noise.octaves(x / 19, y / 19 + 60, 3);
        double edge = Math.min(Math.min(px, panelWidth - px), Math.min(py, panelHeight - py));
        bath *= 0.965 + 0.12 * Math.exp(-Math.max(0, edge) / 22);
        double layer = depth[scene.layerOf(column, row) - 1];
        ground *= bath * layer;
        take.local *= (0.75 + 0.25 * layer) * bath;
        folds(x, y, uneven, take);
        ground *= crease(take.foldX, uneven, Math.round(x / panelWidth) % 2 == 0)
                * crease(take.foldY, uneven, Math.round(y / panelHeight) % 2 == 0);
        if (scene.view() == View.BACK) {
            ground *= 0.93;
            take.local *= 0.72;
        }
        take.ground = Math.max(0, ground);
    }

    private double leak(double u, double v, double x, double y) {
        double extra = 0;
        if (scene.faults().contains(Fault.BEAK_LEAK)) {
            double r = Math.hypot((u - 262) * 0.75, v - 66) / 24;
            extra += 5.5 * Math.exp(-r * r) * (0.8 + 0.7 * noise.octaves(x / 11, y / 11 + 33, 3));
        }
        if (scene.faults().contains(Fault.WARPED_EDGE)) {
            double t = (u - (panelWidth - 62)) / 62;
            extra += t > 0 ? 6.5 * t * t * (0.85 + 0.8 * noise.octaves(x / 18, y / 14 + 12, 3)) : 0;
        }
        return extra;
    }

    /** Old colour coming out of the wood: follows the grain of the board, so it repeats in every panel. */
    private double bleed(double u, double v) {
        double grain = noise.octaves(u / 120, v / 5, 3);
        double patch = noise.octaves(u / 70 + 9, v / 60 + 4, 2);
        return 0.16 * Math.max(0, 0.35 + grain * 0.7) * Math.max(0, 0.4 + patch * 1.5);
    }

    private void localColour(double u, double v, double uneven, Take take) {
        int hole = board.hole(u, v);
        take.localIndex = localOfHole[hole];
        take.local = 0;
        double inCell = board.cellDepth(u, v);
        if (take.localIndex < 0 || inCell < -7) {
            take.localIndex = -1;
            return;
        }
        Motif.Hole h = board.motif.holes().get(hole);
        double r = Math.hypot(u - h.x(), v - h.y());
        double reach = inCell + 0.45 + 0.7 * uneven;
        double body = smooth((reach / (feather * 1.2) + 1) / 2);
        double halo = reach < 0 ? 0.14 * Math.exp(reach / 1.5) : 0;
        take.local = (body * (0.72 + 0.42 * Math.exp(-r * r / 160)) + halo) * (1 + 0.16 * uneven);
    }

    private void folds(double x, double y, double uneven, Take take) {
        double fx = Math.round(x / panelWidth);
        double fy = Math.round(y / panelHeight);
        take.foldX = fx > 0 && fx < scene.across() ? x - fx * panelWidth + 0.35 * uneven : 99;
        take.foldY = fy > 0 && fy < scene.down() ? y - fy * panelHeight + 0.35 * uneven : 99;
    }

    /** A fold turned outward meets the bath and goes darker; one turned inward is starved of it. */
    private static double crease(double mm, double uneven, boolean outward) {
        if (mm > 20 || mm < -20) {
            return 1;
        }
        double line = Math.exp(-mm * mm / 1.1) * (0.8 + 0.5 * uneven);
        double wide = Math.exp(-mm * mm / 18);
        return outward ? 1 + 0.22 * line + 0.05 * wide : 1 - 0.34 * line - 0.06 * wide;
    }

    static double smooth(double t) {
        double c = Math.max(0, Math.min(1, t));
        return c * c * (3 - 2 * c);
    }
}
