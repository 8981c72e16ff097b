package tenterbook.search.query;

/** What is known of a piece as a range of numbers. */
public enum Measured {
    DIPS,
    /** The longer side, cm. */
    LENGTH,
    /** What is recorded as the width, or the shorter side, cm. */
    WIDTH,
    /** Either side, cm. */
    SIDE,
    /** The longer side in times the shorter. */
    RATIO,
    /** The price asked. */
    PRICE,
    /** Grams. */
    MASS,
    /** Of a step of the recipe, minutes. */
    DURATION,
    /** Of a bath, °C. */
    TEMPERATURE,
    /** Of a bath. */
    PH;

    /** Whether a step of the recipe has it, so that a piece may have several. */
    public boolean ofStep() {
        return this == DURATION || this == TEMPERATURE || this == PH;
    }
}
