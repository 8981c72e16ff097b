package tenterbook.colour.target;

import java.util.ArrayList;
import java.util.List;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.LinearRgb;

/** The opaque pixels of a marked part, in linear light, thinned to some 40,000. */
final class CardPixels {
    private static final int MOST = 40_000;
    private static final int BRIGHT = 253;
    private static final int DARK = 2;
    private static final int PARTS = 5;

    private final List<LinearRgb> lights = new ArrayList<>();
    private final double[] sums = new double[PARTS * PARTS];
    private final int[] counts = new int[PARTS * PARTS];
    final int size;
    final double tooBright;
    final double tooDark;

    private CardPixels(Pixels picture, Region part) {
        int w = picture.width();
        int h = picture.height();
        int x0 = (int) Math.floor(part.left() * w);
        int x1 = Math.min(w, (int) Math.ceil(part.right() * w));
        int y0 = (int) Math.floor(part.top() * h);
        int y1 = Math.min(h, (int) Math.ceil(part.bottom() * h));
        int step = 1;
        while ((long) ((x1 - x0) / step) * ((y1 - y0) / step) > MOST) {
            step++;
        }
        int bright = 0;
        int dark = 0;
        for (int y = y0; y < y1; y += step) {
            for (int x = x0; x < x1; x += step) {
                int pixel = picture.codes()[y * w + x];
                if (pixel >>> 24 < 128 || !part.contains((x + 0.5) / w, (y + 0.5) / h)) {
                    continue;
                }
                int r = pixel >> 16 & 0xff;
                int g = pixel >> 8 & 0xff;
                int b = pixel & 0xff;
                bright += Math.max(r, Math.max(g, b)) >= BRIGHT ? 1 : 0;
                dark += Math.min(r, Math.min(g, b)) <= DARK ? 1 : 0;
                LinearRgb light = picture.linear(x, y);
                lights.add(light);
                int cell = PARTS * ((y - y0) * PARTS / (y1 - y0)) + (x - x0) * PARTS / (x1 - x0);
                sums[cell] += light.luminance();
                counts[cell]++;
            }
        }
        size = lights.size();
        tooBright = (double) bright / Math.max(1, size);
        tooDark = (double) dark / Math.max(1, size);
    }

    static CardPixels of(Pixels picture, Region part) {
        return new CardPixels(picture, part);
    }

    LinearRgb light(int i) {
        return lights.get(i);
    }

    double[] red() {
        return lights.stream().mapToDouble(LinearRgb::red).toArray();
    }

    double[] green() {
        return lights.stream().mapToDouble(LinearRgb::green).toArray();
    }

    double[] blue() {
        return lights.stream().mapToDouble(LinearRgb::blue).toArray();
    }

    /** Brightest less darkest part, over the mean, without parts of few pixels, which are mostly noise. */
    double unevenness(double mean) {
        double least = Double.MAX_VALUE;
        double most = 0;
        for (int i = 0; i < sums.length; i++) {
            if (counts[i] >= Math.max(4, size / (PARTS * PARTS * 3))) {
                least = Math.min(least, sums[i] / counts[i]);
                most = Math.max(most, sums[i] / counts[i]);
            }
        }
        return mean > 0 && most > 0 ? (most - least) / mean : 0;
    }
}
