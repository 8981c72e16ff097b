package tenterbook.sample;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.stream.IntStream;

/** A picture in linear light, before a camera has made bytes of it. */
final class Picture {
    final int width;
    final int height;
    final float[] red;
    final float[] green;
    final float[] blue;

    Picture(int width, int height) {
        this.width = width;
        this.height = height;
        this.red = new float[width * height];
        this.green = new float[width * height];
        this.blue = new float[width * height];
    }

    interface Row {
        void at(int y);
    }

    void rows(Row row) {
        IntStream.range(0, height).parallel().forEach(row::at);
    }

    void set(int i, double r, double g, double b) {
        red[i] = (float) r;
        green[i] = (float) g;
        blue[i] = (float) b;
    }

    void times(int i, double k) {
        red[i] *= (float) k;
        green[i] *= (float) k;
        blue[i] *= (float) k;
    }

    /** Lays an encoded sRGB image with alpha over the picture. */
    void over(BufferedImage image) {
        int[] argb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        rows(y -> {
            for (int i = y * width; i < (y + 1) * width; i++) {
                int alpha = argb[i] >>> 24;
                if (alpha > 0) {
                    double a = alpha / 255.0;
                    set(
                            i,
                            red[i] * (1 - a) + a * SampleColour.decode(argb[i] >> 16 & 255),
                            green[i] * (1 - a) + a * SampleColour.decode(argb[i] >> 8 & 255),
                            blue[i] * (1 - a) + a * SampleColour.decode(argb[i] & 255));
                }
            }
        });
    }

    /** The small softness of a telephone's lens: a 3 x 3 binomial, mixed in by share. */
    void soften(double share) {
        for (float[] plane : new float[][] {red, green, blue}) {
            float[] old = plane.clone();
            rows(y -> {
                for (int x = 0; x < width; x++) {
                    int up = Math.max(0, y - 1) * width;
                    int low = Math.min(height - 1, y + 1) * width;
                    int here = y * width;
                    int l = Math.max(0, x - 1);
                    int r = Math.min(width - 1, x + 1);
                    float soft = (4 * old[here + x]
                                    + 2 * (old[here + l] + old[here + r] + old[up + x] + old[low + x])
                                    + old[up + l]
                                    + old[up + r]
                                    + old[low + l]
                                    + old[low + r])
                            / 16;
                    plane[here + x] = (float) (old[here + x] * (1 - share) + soft * share);
                }
            });
        }
    }

    /** What the sensor writes: the cast put on, noise added, encoded to 8-bit sRGB. */
    BufferedImage developed(Scene.Cast cast, double noise, long seed) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        int[] rgb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        rows(y -> {
            for (int x = 0; x < width; x++) {
                int i = y * width + x;
                double common = Noise.grain(x, y, seed) * noise;
                int r = level(red[i] * cast.red(), common + Noise.grain(x / 2, y / 2, seed + 1) * noise * 0.5);
                int g = level(green[i] * cast.green(), common);
                int b = level(blue[i] * cast.blue(), common + Noise.grain(x / 2, y / 2, seed + 2) * noise * 0.6);
                rgb[i] = r << 16 | g << 8 | b;
            }
        });
        return image;
    }

    private static int level(double linear, double noise) {
        return (int) Math.max(0, Math.min(255, Math.round(SampleColour.encodeFast(linear) + noise)));
    }
}
