package tenterbook.search.query;

/** What is known of a piece as a range of numbers. */
public enum Measured {
    DIPS,
    /** The longer side, cm. */
    LENGTH,
    /** The other side, cm. */
    WIDTH,
    /** Either side, cm. */
    SIDE,
    /** The price asked, whatever its currency. */
    PRICE,
    /** Grams. */
    MASS
}
