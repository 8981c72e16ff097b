package tenterbook.photo;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;

/**
 * Upright sRGB pixels, 0xAARRGGBB row by row.
 *
 * @param argb width × height values, not to be changed
 */
record Picture(int[] argb, int width, int height) {
    /** This picture with its long edge reduced to {@code longEdge} pixels; itself if it is no longer than that. */
    Picture within(int longEdge) {
        return Reduction.within(new ArgbRows(argb, width, height), longEdge).orElse(this);
    }

    /** For encoding: opaque, on white where the original was see-through. */
    BufferedImage opaque() {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        int[] out = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        for (int i = 0; i < argb.length; i++) {
            int alpha = argb[i] >>> 24;
            out[i] = alpha == 255 ? argb[i] & 0xffffff : onWhite(argb[i], alpha);
        }
        return image;
    }

    private static int onWhite(int pixel, int alpha) {
        int out = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            out = out << 8 | ((pixel >> shift & 0xff) * alpha + 255 * (255 - alpha) + 127) / 255;
        }
        return out;
    }

    /**
     * Turned and mirrored as an EXIF orientation asks (JEITA CP-3451, tag 274: where row 0 and column 0 of the stored
     * picture belong).
     *
     * @param orientation 1 to 8
     */
    Picture upright(int orientation) {
        if (orientation == 1) {
            return this;
        }
        boolean sideways = orientation >= 5;
        int w = sideways ? height : width;
        int h = sideways ? width : height;
        int[] out = new int[argb.length];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                int fromX;
                int fromY;
                switch (orientation) {
                    case 2 -> {
                        fromX = width - 1 - x;
                        fromY = y;
                    }
                    case 3 -> {
                        fromX = width - 1 - x;
                        fromY = height - 1 - y;
                    }
                    case 4 -> {
                        fromX = x;
                        fromY = height - 1 - y;
                    }
                    case 5 -> {
                        fromX = y;
                        fromY = x;
                    }
                    case 6 -> {
                        fromX = y;
                        fromY = height - 1 - x;
                    }
                    case 7 -> {
                        fromX = width - 1 - y;
                        fromY = height - 1 - x;
                    }
                    case 8 -> {
                        fromX = width - 1 - y;
                        fromY = x;
                    }
                    default -> throw new IllegalArgumentException("An orientation is 1 to 8; found: " + orientation);
                }
                out[y * w + x] = argb[fromY * width + fromX];
            }
        }
        return new Picture(out, w, h);
    }
}
