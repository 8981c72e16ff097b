package tenterbook.colour.compare;

import java.util.Locale;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Worded;

/**
 * One reading of depth of shade, and how it was come by. Readings of two kinds, or in two bands, lie on different
 * scales: they are never fitted, averaged or compared together; see {@link #sameScale}.
 *
 * @param ks K/S, 0 or more, unitless
 * @param kind how it was come by
 * @param band where in the spectrum: a wavelength such as {@code 660 nm} or {@code red channel}; not blank
 */
public record ShadeReading(double ks, Kind kind, String band) {
    public enum Kind implements Worded {
        /** Reflectance at one wavelength, from a spectrophotometer. */
        INSTRUMENT,
        /** One wide channel of a photograph or of a colour worked out from one: a stand-in for reflectance. */
        PHOTO_PROXY;

        /** For a sentence: what the reading comes from. */
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

    /** Whether the two may stand on one axis. */
    public boolean sameScale(ShadeReading other) {
        return kind == other.kind && band.equals(other.band);
    }

    /** For a sentence: {@code a photograph, red channel}; in English. */
    public String scale() {
        return kind.inEnglish() + ", " + band;
    }
}
