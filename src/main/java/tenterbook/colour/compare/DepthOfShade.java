package tenterbook.colour.compare;

import java.util.List;
import java.util.Locale;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.SrgbToLab;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Worded;

/**
 * Depth of shade as K/S, absorption over scattering, which unlike lightness is proportional to the dye on the cloth. K/S = (1 −
 * R)² / 2R for an opaque cloth of reflectance R at one wavelength.
 *
 * <p>A photograph has no wavelengths, so something of it stands in for reflectance. For pieces of many photographs it is the
 * luminance Y: an error of a photograph moves it least. One ΔE changes ln K/S of the sample archive's blues by 0.07 to 0.09
 * in Y and by 0.10 to 0.27 in the red channel, which such blues nearly exhaust (computed). Within one photograph the
 * <em>darkest</em> linear sRGB channel is used, since K/S is commonly read where the dye absorbs most; a channel is wide, so
 * deep shades level off early, and is compared with itself only.
 *
 * @see "Kubelka and Munk 1931, Ein Beitrag zur Optik der Farbanstriche, Z. tech. Phys. 12, 593-601"
 */
public final class DepthOfShade {
    /** A channel of a picture, linear light. */
    public enum Channel implements Worded {
        RED,
        GREEN,
        BLUE;

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
     * Depth of a colour of a photograph, its relative luminance Y taken as reflectance.
     *
     * @return above 0: Y is held to that of L* 1 and 99, beyond which a photograph of cloth shows no difference
     */
    public static double byPhoto(Lab colour) {
        double lightness = Math.max(1, Math.min(99, colour.lightness()));
        return ks(LinearRgb.of(new Lab(lightness, 0, 0)).luminance());
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
