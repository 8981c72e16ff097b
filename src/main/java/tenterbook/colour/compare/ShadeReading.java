package tenterbook.colour.compare;

import java.util.Locale;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Worded;

/**
 * One reading of depth of shade and its source. Readings of two kinds, or in two bands, are on different scales and are never
 * fitted, averaged or compared together; see {@link #sameScale}.
 *
 * @param ks K/S, 0 or more, unitless
 * @param kind source of the reading
 * @param band where in the spectrum: a wavelength such as {@code 660 nm} or {@code red channel}; not blank
 */
public record ShadeReading(double ks, Kind kind, String band) {
    public enum Kind implements Worded {
        /** Reflectance at one wavelength, from a spectrophotometer. */
        INSTRUMENT,
        /** One wide channel of a photograph, or of a colour computed from one, as a proxy for reflectance. */
        PHOTO_PROXY;

        /** The source, as part of a sentence. */
        @Override
        public Message word() {
            return Message.of(
                    "colour.reading." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
    }

    /** @throws IllegalArgumentException if K/S is negative, NaN or infinite, or kind or band is missing */
    public ShadeReading {
        if (!(ks >= 0) || Double.isInfinite(ks)) {
            throw Refusal.of("colour.ks", "found", NumberWords.plain(ks));
        }
        if (kind == null || band == null || band.isBlank()) {
            throw Refusal.of("colour.reading-without-band", "kind", String.valueOf(kind), "band", String.valueOf(band));
        }
    }

    /** Whether the two can be compared. */
    public boolean sameScale(ShadeReading other) {
        return kind == other.kind && band.equals(other.band);
    }

    /** As in {@code a photograph, red channel}; in English. */
    public String scale() {
        return kind.inEnglish() + ", " + band;
    }
}
