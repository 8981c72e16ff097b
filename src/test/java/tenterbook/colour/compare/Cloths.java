package tenterbook.colour.compare;

import java.util.SplittableRandom;
import tenterbook.colour.space.Lab;

/** Made-up cloth: soft blots of light and dark on a ground, drawn at any place and scale from the same numbers. */
final class Cloths {
    /** Beyond this a blot adds less than a thousandth of a level; most pixels lie there for most blots. */
    private static final double NOTHING_LEFT = 12;

    private Cloths() {}

    /** Shade from 0 (ground) to 1 (resist) anywhere on the plane; the cloth itself lies within -1 to 1. */
    interface Image {
        double at(double x, double y);
    }

    static Image blots(long seed, int count) {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] blots = new double[count][];
        for (int i = 0; i < count; i++) {
            blots[i] = new double[] {
                random.nextDouble() * 2.4 - 1.2, random.nextDouble() * 2.4 - 1.2, 0.04 + 0.12 * random.nextDouble()
            };
        }
        return (x, y) -> {
            double left = 1;
            for (double[] blot : blots) {
                double d = ((x - blot[0]) * (x - blot[0]) + (y - blot[1]) * (y - blot[1])) / (blot[2] * blot[2]);
                if (d < NOTHING_LEFT) {
                    left *= 1 - 0.8 * Math.exp(-d);
                }
            }
            return 1 - left;
        };
    }

    /** Paints with a ground and a resist colour; pixels jitter by {@code noise} L*. */
    static ComparedPicture paint(
            Image image, int width, int height, Alignment where, Lab ground, Lab resist, double noise) {
        SplittableRandom random = new SplittableRandom(7 + width);
        int[] argb = new int[width * height];
        double half = Math.max(width, height) / 2.0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double u = where == null ? x : where.x(x, y);
                double v = where == null ? y : where.y(x, y);
                double t = image.at((u - (width - 1) / 2.0) / half, (v - (height - 1) / 2.0) / half);
                double jitter = noise * random.nextGaussian();
                var colour = new Lab(
                                ground.lightness() + t * (resist.lightness() - ground.lightness()) + jitter,
                                ground.a() + t * (resist.a() - ground.a()),
                                ground.b() + t * (resist.b() - ground.b()))
                        .srgb();
                argb[y * width + x] = 0xff000000 | colour.red() << 16 | colour.green() << 8 | colour.blue();
            }
        }
        return new ComparedPicture(argb, width, height);
    }
}
