package tenterbook.colour.palette;

import tenterbook.colour.space.Lab;
import tenterbook.colour.space.SrgbCurve;
import tenterbook.colour.space.SrgbToLab;

/**
 * A picture made smaller by averaging whole blocks in linear light, in CIELAB (D65, 2°), for finding shapes in it. Pixels
 * less than half opaque count as what they are behind their opacity.
 */
public final class LabRaster {
    private final int width;
    private final int height;
    private final int block;
    private final double[] lab;
    private final double partAcross;
    private final double partDown;

    private LabRaster(Pixels picture, int block) {
        this.block = block;
        width = Math.max(1, picture.width() / block);
        height = Math.max(1, picture.height() / block);
        lab = new double[3 * width * height];
        partAcross = Math.min(1.0 / width, (double) block / picture.width());
        partDown = Math.min(1.0 / height, (double) block / picture.height());
        int tall = Math.min(block, picture.height());
        int wide = Math.min(block, picture.width());
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double r = 0;
                double g = 0;
                double b = 0;
                for (int dy = 0; dy < tall; dy++) {
                    int row = (y * block + dy) * picture.width() + x * block;
                    for (int dx = 0; dx < wide; dx++) {
                        int pixel = picture.argb()[row + dx];
                        r += SrgbCurve.linear(pixel >> 16 & 0xff);
                        g += SrgbCurve.linear(pixel >> 8 & 0xff);
                        b += SrgbCurve.linear(pixel & 0xff);
                    }
                }
                int n = tall * wide;
                SrgbToLab.ofLinear(r / n, g / n, b / n, lab, 3 * (y * width + x));
            }
        }
    }

    /** @param longEdge the raster is at most about this long; whole blocks only, so it may be up to twice as long */
    public static LabRaster of(Pixels picture, int longEdge) {
        return new LabRaster(picture, Math.max(1, Math.max(picture.width(), picture.height()) / longEdge));
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    public int size() {
        return width * height;
    }

    /** Pixels of the picture to a cell's side. */
    public int block() {
        return block;
    }

    /** Where so many columns from the left end, as part of the picture's width. */
    public double across(double columns) {
        return Math.min(1, columns * partAcross);
    }

    /** Where so many rows from the top end, as part of the picture's height. */
    public double down(double rows) {
        return Math.min(1, rows * partDown);
    }

    public double lightness(int cell) {
        return lab[3 * cell];
    }

    public double a(int cell) {
        return lab[3 * cell + 1];
    }

    public double b(int cell) {
        return lab[3 * cell + 2];
    }

    public Lab lab(int cell) {
        return new Lab(lightness(cell), a(cell), b(cell));
    }

    /** Squared Euclidean distance in CIELAB between a cell and three numbers. */
    public double squared(int cell, double lightness, double a, double b) {
        double dl = lab[3 * cell] - lightness;
        double da = lab[3 * cell + 1] - a;
        double db = lab[3 * cell + 2] - b;
        return dl * dl + da * da + db * db;
    }
}
