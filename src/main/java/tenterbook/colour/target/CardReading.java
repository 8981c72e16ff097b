package tenterbook.colour.target;

import java.util.Arrays;
import java.util.Optional;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Threshold;
import tenterbook.words.Message;

/**
 * The colour of a card in the picture, before any correction, and whether it is usable.
 *
 * @param mean linear light; in each channel without the lowest and highest 5 % of the pixels
 * @param spread half of the pixels lie within this ΔE00 of the mean
 * @param tooBright share of pixels with a channel at level 253 or above, of the file's own numbers, where the sensor or the file clips
 * @param tooDark share of pixels with a channel at level 2 or below
 * @param unevenness largest difference of luminance between parts of the card (five by five), as part of the mean
 * @param pixels how many pixels were read
 */
public record CardReading(
        LinearRgb mean, double spread, double tooBright, double tooDark, double unevenness, int pixels) {
    /** Limits of our own choice; a fault below them moves the result by less than the method itself, {@link StatedError}. */
    static final double MOST_CLIPPED = Threshold.number("card-clipped");

    static final double MOST_UNEVEN = Threshold.number("card-uneven");
    static final double MOST_SPREAD = Threshold.number("card-spread");
    static final int FEWEST_PIXELS = 60;

    /**
     * @throws CardRefused if the marked part covers fewer than 60 opaque pixels
     */
    public static CardReading of(Pixels picture, Region part) {
        CardPixels pixels = CardPixels.of(picture, part);
        if (pixels.size < FEWEST_PIXELS) {
            throw new CardRefused(Message.of("card.too-few-pixels", "least", FEWEST_PIXELS, "found", pixels.size));
        }
        LinearRgb mean = new LinearRgb(trimmed(pixels.red()), trimmed(pixels.green()), trimmed(pixels.blue()));
        return new CardReading(
                mean,
                spread(pixels, mean.lab()),
                pixels.tooBright,
                pixels.tooDark,
                pixels.unevenness(mean.luminance()),
                pixels.size);
    }

    /** Why this card cannot be used, in a sentence that says what to do; empty if it can. */
    public Optional<Message> fault() {
        if (tooBright > MOST_CLIPPED) {
            return Optional.of(Message.of("card.too-bright", "share", NumberWords.percent(tooBright, 0)));
        }
        if (tooDark > MOST_CLIPPED) {
            return Optional.of(Message.of("card.too-dark", "share", NumberWords.percent(tooDark, 0)));
        }
        if (unevenness > MOST_UNEVEN) {
            return Optional.of(Message.of("card.lit-unevenly", "share", NumberWords.percent(unevenness, 0)));
        }
        if (spread > MOST_SPREAD) {
            return Optional.of(Message.of("card.not-one-colour", "spread", NumberWords.decimals(spread, 1)));
        }
        return Optional.empty();
    }

    /** This reading. @throws CardRefused if it cannot be used */
    CardReading usable() {
        fault().ifPresent(sentence -> {
            throw new CardRefused(sentence);
        });
        return this;
    }

    private static double trimmed(double[] values) {
        Arrays.sort(values);
        int cut = values.length / 20;
        return Arrays.stream(values, cut, values.length - cut).average().orElseThrow();
    }

    private static double spread(CardPixels pixels, Lab mean) {
        double[] distances = new double[pixels.size];
        for (int i = 0; i < distances.length; i++) {
            distances[i] = Ciede2000.difference(pixels.light(i).lab(), mean);
        }
        Arrays.sort(distances);
        return distances[distances.length / 2];
    }
}
