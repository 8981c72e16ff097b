package tenterbook.colour;

/**
 * One reading of depth of shade, and how it was come by. Readings of two kinds, or in two bands, lie on different
 * scales: they are never fitted, averaged or compared together; see {@link #sameScale}.
 *
 * @param ks K/S, 0 or more, unitless
 * @param kind how it was come by
 * @param band where in the spectrum: a wavelength such as {@code 660 nm} or {@code red channel}; not blank
 */
public record ShadeReading(double ks, Kind kind, String band) {
    public enum Kind {
        /** Reflectance at one wavelength, from a spectrophotometer. */
        INSTRUMENT("an instrument"),
        /** One wide channel of a photograph or of a colour worked out from one: a stand-in for reflectance. */
        PHOTO_PROXY("a photograph");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** For a sentence: what the reading comes from. */
        public String words() {
            return words;
        }
    }

    /** @throws IllegalArgumentException if K/S is negative, NaN or infinite, or kind or band is missing */
    public ShadeReading {
        if (!(ks >= 0) || Double.isInfinite(ks)) {
            throw new IllegalArgumentException("Depth of shade K/S is 0 or more and finite; found: " + ks);
        }
        if (kind == null || band == null || band.isBlank()) {
            throw new IllegalArgumentException("A depth of shade says what it was read with and in which band; found: "
                    + kind + ", \"" + band + "\"");
        }
    }

    /** Whether the two may stand on one axis. */
    public boolean sameScale(ShadeReading other) {
        return kind == other.kind && band.equals(other.band);
    }

    /** For a sentence: {@code a photograph, red channel}. */
    public String scale() {
        return kind.words() + ", " + band;
    }
}
