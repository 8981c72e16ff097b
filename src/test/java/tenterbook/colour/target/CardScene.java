package tenterbook.colour.target;

import java.util.Random;
import java.util.function.UnaryOperator;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.SrgbCurve;

/** A picture painted in linear light, then seen through a camera: its cast, its noise, its 8 bits. */
final class CardScene {
    final int width;
    final int height;
    private final LinearRgb[] light;

    CardScene(int width, int height, Lab backdrop) {
        this.width = width;
        this.height = height;
        light = new LinearRgb[width * height];
        java.util.Arrays.fill(light, LinearRgb.of(backdrop));
    }

    CardScene paint(Region part, Lab lab) {
        return shade(part, (x, y, old) -> LinearRgb.of(lab));
    }

    interface Shade {
        LinearRgb at(double x, double y, LinearRgb old);
    }

    CardScene shade(Region part, Shade shade) {
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double u = (x + 0.5) / width;
                double v = (y + 0.5) / height;
                if (part.contains(u, v)) {
                    light[y * width + x] = shade.at(u, v, light[y * width + x]);
                }
            }
        }
        return this;
    }

    /** @param noise standard deviation in levels of 255, each channel by itself */
    Pixels seen(UnaryOperator<LinearRgb> camera, double noise) {
        Random random = new Random(11);
        int[] argb = new int[light.length];
        for (int i = 0; i < argb.length; i++) {
            LinearRgb c = camera.apply(light[i]);
            argb[i] = 0xff000000
                    | level(c.red(), noise * random.nextGaussian()) << 16
                    | level(c.green(), noise * random.nextGaussian()) << 8
                    | level(c.blue(), noise * random.nextGaussian());
        }
        return new Pixels(argb, width, height);
    }

    private static int level(double linear, double noise) {
        double v = Math.max(0, Math.min(1, linear));
        double encoded = v <= 0.0031308 ? 12.92 * v : 1.055 * Math.pow(v, 1 / 2.4) - 0.055;
        return (int) Math.max(0, Math.min(255, Math.round(255 * encoded + noise)));
    }

    static UnaryOperator<LinearRgb> gains(double r, double g, double b) {
        return c -> new LinearRgb(c.red() * r, c.green() * g, c.blue() * b);
    }

    static UnaryOperator<LinearRgb> mix(double... m) {
        Matrix3 matrix = Matrix3.of(m);
        return c -> {
            double[] out = matrix.times(c.red(), c.green(), c.blue());
            return new LinearRgb(out[0], out[1], out[2]);
        };
    }

    static double meanLevel(LinearRgb light) {
        return SrgbCurve.encoded(light.luminance());
    }
}
