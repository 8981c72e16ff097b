package tenterbook.colour.palette;

import java.util.Arrays;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.words.Refusal;

/**
 * The colour of a marked part of a picture, with how even it is.
 *
 * <p>The mean is trimmed: the tenth of the pixels that lie furthest from the median colour (threads, glints, a pin) is
 * left out. The spread counts all pixels.
 *
 * @param mean CIELAB, D65, 2° observer; of the picture, so uncalibrated if the picture is
 * @param pixels how many pixels were measured, thinned to at most 40,000
 * @param spread half of the pixels lie within this CIEDE2000 difference of the mean; 0 for a flat colour
 */
public record RegionColour(Lab mean, int pixels, double spread) {
    private static final double KEPT = 0.9;

    /**
     * @param argb one value per pixel, 0xAARRGGBB, sRGB, row by row from the top left
     * @throws IllegalArgumentException if the number of values is not width × height, or the region covers no opaque
     *     pixel
     */
    public static RegionColour of(int[] argb, int width, int height, Region region) {
        return of(new Pixels(argb, width, height), region, PixelColour.SEEN);
    }

    /**
     * The same with each pixel's colour corrected first; the mean has the white point of {@code colour}.
     *
     * @throws IllegalArgumentException if the region covers no opaque pixel
     */
    public static RegionColour of(Pixels picture, Region region, PixelColour colour) {
        int width = picture.width();
        int height = picture.height();
        LabSample sample = LabSample.of(picture, region, colour);
        if (sample.size == 0) {
            throw Refusal.of("colour.no-pixel", "width", width, "height", height);
        }
        double[] toMedian = distances(sample, median(sample));
        double[] sorted = toMedian.clone();
        Arrays.sort(sorted);
        double furthest = sorted[(int) Math.ceil(KEPT * sample.size) - 1];
        Lab mean = meanWithin(sample, toMedian, furthest);
        double[] toMean = distances(sample, mean);
        Arrays.sort(toMean);
        return new RegionColour(mean, sample.size, middle(toMean));
    }

    private static Lab median(LabSample sample) {
        double[] middle = new double[3];
        double[] axis = new double[sample.size];
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i < sample.size; i++) {
                axis[i] = sample.values[3 * i + k];
            }
            Arrays.sort(axis);
            middle[k] = middle(axis);
        }
        return new Lab(middle[0], middle[1], middle[2]);
    }

    private static double middle(double[] sorted) {
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    private static double[] distances(LabSample sample, Lab from) {
        double[] distances = new double[sample.size];
        double[] v = sample.values;
        for (int i = 0; i < sample.size; i++) {
            distances[i] =
                    Ciede2000.difference(from.lightness(), from.a(), from.b(), v[3 * i], v[3 * i + 1], v[3 * i + 2]);
        }
        return distances;
    }

    private static Lab meanWithin(LabSample sample, double[] distances, double furthest) {
        double[] sum = new double[3];
        int counted = 0;
        for (int i = 0; i < sample.size; i++) {
            if (distances[i] <= furthest) {
                counted++;
                for (int k = 0; k < 3; k++) {
                    sum[k] += sample.values[3 * i + k];
                }
            }
        }
        return new Lab(sum[0] / counted, sum[1] / counted, sum[2] / counted);
    }
}
