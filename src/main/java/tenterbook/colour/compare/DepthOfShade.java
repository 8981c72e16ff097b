package tenterbook.colour.compare;

import java.util.List;
import java.util.Locale;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.MeasurementResult;
import tenterbook.colour.space.SrgbToLab;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Worded;

/**
 * Depth of shade as K/S, absorption over scattering, which unlike lightness is proportional to the dye on the cloth. K/S = (1 −
 * R)² / 2R for an opaque cloth of reflectance R at one wavelength.
 *
 * <p>A photograph has no wavelengths. As a proxy, one linear sRGB channel is taken as reflectance: the <em>darkest</em> of the
 * three, since K/S is commonly read where the dye absorbs most (the red channel for blue cloth, the blue one for yellow).
 * Luminance was not chosen: it weighs green most, and a blue dye hardly darkens it. The channel is wide, so the proxy is not
 * proportional to dye, and deep shades level off early; the picture's white must be that of a grey card. Such a reading is
 * compared with its own channel only.
 *
 * @see "Kubelka and Munk 1931, Ein Beitrag zur Optik der Farbanstriche, Z. tech. Phys. 12, 593-601"
 */
public final class DepthOfShade {
    /** Greatest excess over 1 of a white channel that is attributed to rounding and read as 1. */
    private static final double WHITE_SLACK = 1e-4;

    /** A channel of a picture, linear light. */
    public enum Channel implements Worded {
        RED,
        GREEN,
        BLUE;

        /** As in {@link ShadeReading#band()}. */
        public String band() {
            return name().toLowerCase(Locale.ROOT) + " channel";
        }

        @Override
        public Message word() {
            return Message.of("colour.channel." + name().toLowerCase(Locale.ROOT));
        }

        double of(Lab colour) {
            return SrgbToLab.linearOf(colour.lightness(), colour.a(), colour.b())[ordinal()];
        }
    }

    private DepthOfShade() {}

    /**
     * K/S of a reflectance.
     *
     * @param reflectance R, above 0 (perfect black has no finite depth) to 1 (nothing absorbed)
     * @return 0 for R = 1, growing without bound towards R = 0
     * @throws IllegalArgumentException if out of that range or NaN; a percentage is divided by 100 first
     */
    public static double ks(double reflectance) {
        if (!(reflectance > 0 && reflectance <= 1)) {
            throw Refusal.of("colour.reflectance", "found", String.valueOf(reflectance));
        }
        return (1 - reflectance) * (1 - reflectance) / (2 * reflectance);
    }

    /**
     * The reflectance that has this K/S: 1 + K/S − √((K/S)² + 2 K/S), in a form that loses no digits for deep shades.
     *
     * @param ks 0 or more, finite
     * @return above 0 to 1
     * @throws IllegalArgumentException if negative, NaN or infinite
     */
    public static double reflectance(double ks) {
        if (!(ks >= 0) || Double.isInfinite(ks)) {
            throw Refusal.of("colour.ks", "found", NumberWords.plain(ks));
        }
        return 1 / (1 + ks + Math.sqrt(ks * (ks + 2)));
    }

    /**
     * A proxy from a colour of a calibrated photograph.
     *
     * @param channel one for the whole series; see {@link #darkestChannel}
     * @return refused where the channel is 0 (too deep for sRGB) or above white
     */
    public static MeasurementResult<ShadeReading> byPhoto(Lab colour, Channel channel) {
        double linear = channel.of(colour);
        if (linear <= 0) {
            return MeasurementResult.refused(
                    Message.of("colour.depth-without-light", "colour", colour.text(), "channel", channel));
        }
        if (linear > 1 + WHITE_SLACK) {
            return MeasurementResult.refused(
                    Message.of("colour.depth-above-white", "colour", colour.text(), "channel", channel));
        }
        return MeasurementResult.found(new ShadeReading(ks(Math.min(1, linear)), channel.band()));
    }

    /**
     * The channel in which these colours are darkest on average, for reading a whole series.
     *
     * @throws IllegalStateException if there is no colour
     */
    public static Channel darkestChannel(List<Lab> colours) {
        if (colours.isEmpty()) {
            throw new IllegalStateException("A channel is chosen from one colour or more; none was given");
        }
        Channel darkest = Channel.RED;
        double least = Double.MAX_VALUE;
        for (Channel channel : Channel.values()) {
            double sum = colours.stream().mapToDouble(channel::of).sum();
            if (sum < least) {
                least = sum;
                darkest = channel;
            }
        }
        return darkest;
    }
}
