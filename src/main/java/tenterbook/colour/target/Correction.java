package tenterbook.colour.target;

import java.util.List;
import tenterbook.colour.palette.PixelColour;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.RegionColour;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.SrgbCurve;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * Correction for light and camera: corrected = matrix · light + offset, on linear light. It includes the exposure, so that the
 * card has its known reflectance.
 *
 * @param how method of calibration
 * @param matrix nine numbers, row by row; diagonal for a grey card
 * @param offset three numbers, as parts of a white reflector's light; zero except for a white and a black card
 * @param likelyError ΔE00, see {@link MeasuredColour}; null for {@link #NONE}
 * @param note remarks for the maker, in sentences; may be empty
 */
public record Correction(Calibration how, List<Double> matrix, List<Double> offset, Double likelyError, String note) {
    /** Colours as the picture has them. */
    public static final Correction NONE = new Correction(
            Calibration.NONE,
            Matrix3.IDENTITY.rows(),
            List.of(0.0, 0.0, 0.0),
            null,
            Message.of("card.uncalibrated").inEnglish());

    /**
     * Residual ΔE00 of a dyed colour when only greys are known, since the camera's primaries and the file's tone curve are not.
     * The tests simulate two cameras with wider primaries and find the median error of 18 coloured patches below it; the size
     * is common practice.
     */
    public static final double GREY_FLOOR = 4;

    /** Greatest ratio of the channels' gains for a grey card. */
    private static final double MOST_CAST = 4;

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
        double cast = Math.max(r, Math.max(g, b)) / Math.min(r, Math.min(g, b));
        if (!(cast > 0 && cast <= MOST_CAST)) {
            throw new CardRefused(
                    Message.of("card.no-such-card", "card", card.name(), "apart", NumberWords.decimals(cast, 1)));
        }
        return new Correction(
                Calibration.GREY_CARD,
                Matrix3.diagonal(r, g, b).rows(),
                NONE.offset,
                Math.hypot(GREY_FLOOR, cardError(reading, card)),
                "");
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
        return new Correction(
                Calibration.WHITE_AND_BLACK,
                Matrix3.diagonal(gain[0], gain[1], gain[2]).rows(),
                List.of(
                        knownDark.red() - gain[0] * dark.red(),
                        knownDark.green() - gain[1] * dark.green(),
                        knownDark.blue() - gain[2] * dark.blue()),
                Math.hypot(GREY_FLOOR, Math.max(cardError(white, whiteCard), cardError(black, blackCard))),
                "");
    }

    /** The corrected light of one colour; it may lie outside 0 to 1. */
    public LinearRgb apply(LinearRgb light) {
        List<Double> m = matrix;
        double r = light.red();
        double g = light.green();
        double b = light.blue();
        return new LinearRgb(
                m.get(0) * r + m.get(1) * g + m.get(2) * b + offset.get(0),
                m.get(3) * r + m.get(4) * g + m.get(5) * b + offset.get(1),
                m.get(6) * r + m.get(7) * g + m.get(8) * b + offset.get(2));
    }

    /**
     * The corrected colour of a part of the picture.
     *
     * @throws IllegalArgumentException if the part covers no opaque pixel
     */
    public MeasuredColour measure(Pixels picture, Region part, WhitePoint white) {
        PixelColour corrected = (red, green, blue, out, at) -> {
            var lab = apply(new LinearRgb(SrgbCurve.linear(red), SrgbCurve.linear(green), SrgbCurve.linear(blue)))
                    .lab();
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
