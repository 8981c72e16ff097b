package tenterbook.colour.target;

import java.util.List;
import tenterbook.colour.palette.PixelColour;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.RegionColour;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.measure.NumberWords;
import tenterbook.measure.Threshold;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Correction for light and camera: corrected = matrix · light to the power of the tone + offset, on linear
 * light. It includes the exposure, so that the
 * card has its known reflectance.
 *
 * @param how method of calibration
 * @param matrix nine numbers, row by row; diagonal for a grey card
 * @param offset three numbers, as parts of a white reflector's light; zero except for a white and a black card
 * @param tone power of each channel before the matrix, since cameras do not keep to the sRGB curve; 1 except for a chart
 * @param likelyError ΔE00, see {@link MeasuredColour}; null for {@link #NONE}
 * @param halfError ΔE00 for one half of colours; null for {@link #NONE} and for corrections kept before 2026-11-28, whose likely
 *     error was a typical one
 * @param note remarks for the maker, in sentences; may be empty
 */
public record Correction(
        Calibration how,
        List<Double> matrix,
        List<Double> offset,
        double tone,
        Double likelyError,
        Double halfError,
        String note) {
    /** Colours as the picture has them. */
    public static final Correction NONE = new Correction(
            Calibration.NONE,
            Matrix3.IDENTITY.rows(),
            List.of(0.0, 0.0, 0.0),
            1,
            null,
            null,
            Message.of("card.uncalibrated").inEnglish());

    /** Greatest ratio of the channels' gains for a grey card. */
    private static final double MOST_CAST = Threshold.numbers("card-cast").get(1);

    /**
     * Gains further apart have the errors of {@link StatedError#STRONG_CAST}.
     */
    private static final double MOST_TRUSTED_CAST =
            Threshold.numbers("card-cast").get(0);

    private static final double LEAST_LIGHT = 0.004;

    public Correction {
        matrix = List.copyOf(matrix);
        offset = List.copyOf(offset);
        if (matrix.size() != 9 || offset.size() != 3) {
            throw Refusal.of("card.correction", "matrix", matrix.size(), "offset", offset.size());
        }
    }

    /**
     * One card: a gain for each channel.
     *
     * @throws CardRefused if the reading has a fault or is not neutral
     */
    public static Correction byGrey(CardReading reading, KnownCard card) {
        LinearRgb seen = lit(reading.usable());
        LinearRgb known = LinearRgb.of(card.lab());
        double r = known.red() / seen.red();
        double g = known.green() / seen.green();
        double b = known.blue() / seen.blue();
        double cast = cast(r, g, b);
        if (!(cast > 0 && cast <= MOST_CAST)) {
            throw new CardRefused(
                    Message.of("card.no-such-card", "card", card.name(), "apart", NumberWords.decimals(cast, 1)));
        }
        return diagonal(Calibration.GREY_CARD, new double[] {r, g, b}, NONE.offset, cardError(reading, card));
    }

    /**
     * A white and a black card: for each channel a gain, and an offset for stray light.
     *
     * @throws CardRefused if a reading has a fault, or the white is not clearly brighter than the black
     */
    public static Correction byWhiteAndBlack(
            CardReading white, KnownCard whiteCard, CardReading black, KnownCard blackCard) {
        LinearRgb light = lit(white.usable());
        LinearRgb dark = black.usable().mean();
        LinearRgb knownLight = LinearRgb.of(whiteCard.lab());
        LinearRgb knownDark = LinearRgb.of(blackCard.lab());
        double[] seen = {light.red() - dark.red(), light.green() - dark.green(), light.blue() - dark.blue()};
        double[] known = {
            knownLight.red() - knownDark.red(),
            knownLight.green() - knownDark.green(),
            knownLight.blue() - knownDark.blue()
        };
        for (int i = 0; i < 3; i++) {
            if (!(known[i] > 0 && seen[i] > 0.2 * light.luminance())) {
                throw new CardRefused(
                        Message.of("card.white-not-brighter", "white", whiteCard.name(), "black", blackCard.name()));
            }
        }
        double[] gain = {known[0] / seen[0], known[1] / seen[1], known[2] / seen[2]};
        return diagonal(
                Calibration.WHITE_AND_BLACK,
                gain,
                List.of(
                        knownDark.red() - gain[0] * dark.red(),
                        knownDark.green() - gain[1] * dark.green(),
                        knownDark.blue() - gain[2] * dark.blue()),
                Math.max(cardError(white, whiteCard), cardError(black, blackCard)));
    }

    private static Correction diagonal(Calibration how, double[] gain, List<Double> offset, double cardError) {
        double cast = cast(gain[0], gain[1], gain[2]);
        boolean strong = cast > MOST_TRUSTED_CAST;
        StatedError stated = strong ? StatedError.STRONG_CAST : StatedError.of(how);
        return new Correction(
                how,
                Matrix3.diagonal(gain[0], gain[1], gain[2]).rows(),
                offset,
                1,
                Math.hypot(stated.nineInTen(), cardError),
                Math.hypot(stated.half(), cardError),
                strong
                        ? Message.of("card.strong-cast", "apart", NumberWords.decimals(cast, 1))
                                .inEnglish()
                        : "");
    }

    private static double cast(double r, double g, double b) {
        return Math.max(r, Math.max(g, b)) / Math.min(r, Math.min(g, b));
    }

    /** The corrected light of one colour; it may lie outside 0 to 1. */
    public LinearRgb apply(LinearRgb light) {
        List<Double> m = matrix;
        double r = toned(light.red(), tone);
        double g = toned(light.green(), tone);
        double b = toned(light.blue(), tone);
        return new LinearRgb(
                m.get(0) * r + m.get(1) * g + m.get(2) * b + offset.get(0),
                m.get(3) * r + m.get(4) * g + m.get(5) * b + offset.get(1),
                m.get(6) * r + m.get(7) * g + m.get(8) * b + offset.get(2));
    }

    static double toned(double light, double tone) {
        return tone == 1 ? light : Math.pow(Math.max(0, light), tone);
    }

    /**
     * The corrected colour of a part of the picture.
     *
     * @throws IllegalArgumentException if the part covers no opaque pixel
     */
    public MeasuredColour measure(Pixels picture, Region part, WhitePoint white) {
        PixelColour corrected = (light, out, at) -> {
            Lab lab = apply(light).lab();
            out[at] = lab.lightness();
            out[at + 1] = lab.a();
            out[at + 2] = lab.b();
        };
        RegionColour found = RegionColour.of(picture, part, corrected);
        CardPixels pixels = CardPixels.of(picture, part);
        String notes = note;
        double clipped = pixels.tooBright + pixels.tooDark;
        if (clipped > CardReading.MOST_CLIPPED) {
            notes = (notes + " "
                            + Message.of("card.clipped", "share", NumberWords.percent(clipped, 0))
                                    .inEnglish())
                    .strip();
        }
        return new MeasuredColour(
                WhitePoint.D65.adapt(found.mean(), white),
                white,
                MeasuredColour.TWO_DEGREES,
                found.spread(),
                found.pixels(),
                likelyError,
                how,
                notes);
    }

    /** ΔE00 of the card if its light is off by half its unevenness, combined with the noise of its mean. */
    static double cardError(CardReading reading, KnownCard card) {
        LinearRgb known = LinearRgb.of(card.lab());
        double light = Ciede2000.difference(
                card.lab(), known.times(1 + reading.unevenness() / 2).lab());
        return Math.hypot(light, reading.spread() / Math.sqrt(reading.pixels()));
    }

    private static LinearRgb lit(CardReading reading) {
        LinearRgb mean = reading.mean();
        if (!(Math.min(mean.red(), Math.min(mean.green(), mean.blue())) > LEAST_LIGHT)) {
            throw new CardRefused(Message.of("card.no-light"));
        }
        return mean;
    }
}
