package tenterbook.colour.compare;

import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * One reading of depth of shade from a photograph: a wide channel as a proxy for reflectance. Readings in two bands are on
 * different scales and are never fitted, averaged or compared together; see {@link #sameScale}.
 *
 * @param ks K/S, 0 or more, unitless
 * @param band where in the spectrum, such as {@code red channel}; not blank
 */
public record ShadeReading(double ks, String band) {
    /** @throws IllegalArgumentException if K/S is negative, NaN or infinite, or the band is missing */
    public ShadeReading {
        if (!(ks >= 0) || Double.isInfinite(ks)) {
            throw Refusal.of("colour.ks", "found", NumberWords.plain(ks));
        }
        if (band == null || band.isBlank()) {
            throw Refusal.of("colour.reading-without-band", "band", String.valueOf(band));
        }
    }

    /** Whether the two can be compared. */
    public boolean sameScale(ShadeReading other) {
        return band.equals(other.band);
    }

    /** As in {@code a photograph, red channel}; in English. */
    public String scale() {
        return Message.of("colour.reading.photo-proxy").inEnglish() + ", " + band;
    }
}
