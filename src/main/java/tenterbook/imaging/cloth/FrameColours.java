package tenterbook.imaging.cloth;

import java.util.Arrays;
import tenterbook.colour.palette.ColourMixture;
import tenterbook.colour.palette.LabRaster;

/**
 * Which cells at the frame of a picture surely show its backdrop: those of colours that are clearly more frequent there than in
 * the picture's middle. Where the cloth runs out of the picture, its colours are as frequent in the middle.
 */
final class FrameColours {
    private static final int COLOURS = 12;
    private static final int DEEP = 3;
    private static final double CLEARLY_MORE = 1.4;

    private final boolean[] backdrop;
    private final double backdropShare;
    private final double alike;

    FrameColours(LabRaster raster) {
        boolean[] all = new boolean[raster.size()];
        Arrays.fill(all, true);
        ColourMixture colours = ColourMixture.of(raster, all, COLOURS);
        double[] atFrame = new double[COLOURS];
        double[] inMiddle = new double[COLOURS];
        int[] colour = new int[raster.size()];
        backdrop = new boolean[raster.size()];
        for (int cell = 0; cell < backdrop.length; cell++) {
            double across = raster.across(cell % raster.width() + 0.5);
            double down = raster.down(cell / raster.width() + 0.5);
            backdrop[cell] = atFrame(raster, cell);
            boolean middle = across > 0.25 && across < 0.75 && down > 0.25 && down < 0.75;
            if (backdrop[cell] || middle) {
                colour[cell] = colours.group(raster.lightness(cell), raster.a(cell), raster.b(cell));
                (backdrop[cell] ? atFrame : inMiddle)[colour[cell]]++;
            }
        }
        double frame = Math.max(1, Arrays.stream(atFrame).sum());
        double middle = Math.max(1, Arrays.stream(inMiddle).sum());
        double common = 0;
        for (int i = 0; i < COLOURS; i++) {
            common += Math.min(atFrame[i] / frame, inMiddle[i] / middle);
        }
        alike = common;
        int sure = 0;
        for (int cell = 0; cell < backdrop.length; cell++) {
            int c = colour[cell];
            backdrop[cell] &= atFrame[c] / frame > CLEARLY_MORE * inMiddle[c] / middle;
            sure += backdrop[cell] ? 1 : 0;
        }
        backdropShare = sure / frame;
    }

    private static boolean atFrame(LabRaster raster, int cell) {
        int x = cell % raster.width();
        int y = cell / raster.width();
        return Math.min(Math.min(x, raster.width() - 1 - x), Math.min(y, raster.height() - 1 - y)) < DEEP;
    }

    /** The cells, only at the frame, that surely show the backdrop. */
    boolean[] backdrop() {
        return backdrop;
    }

    /** Their part of the cells at the frame. */
    double backdropShare() {
        return backdropShare;
    }

    /** How much of their colours frame and middle have in common, 0 to 1. */
    double alike() {
        return alike;
    }
}
