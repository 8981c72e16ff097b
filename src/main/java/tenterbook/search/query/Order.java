package tenterbook.search.query;

import java.util.Locale;

/** How results are ordered. Pieces that lack the value come last in either direction; ties go by number. */
public enum Order {
    RELEVANCE,
    /** Latest finished first; by the day it was recorded where the other is not known. */
    NEWEST,
    OLDEST,
    NUMBER,
    TITLE,
    /** Fewest dips first, by the lower end of a range. */
    DIPS,
    MOST_DIPS,
    /** Largest area first; only pieces with both sides known have one. */
    SIZE,
    SMALLEST,
    /** Lowest amount first, currencies not converted. */
    PRICE,
    DEAREST,
    /** Longest ago examined first; pieces never examined, as all that lack a value, last. */
    EXAMINED,
    /** Lowest L* first, by the mean of its colours (named, else of the cloth). */
    DARKEST,
    LIGHTEST,
    /** Greatest difference of L* between its colours first. */
    CONTRAST,
    /** Nearest colour first; only with a colour asked for. */
    COLOUR;

    /** The value in the address, as in {@code newest}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
