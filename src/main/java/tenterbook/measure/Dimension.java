package tenterbook.measure;

/** What a unit measures; two units convert into each other when they share one. */
public enum Dimension {
    COUNT,
    PERCENT,
    RATIO,
    ACIDITY,
    LENGTH,
    AREA,
    MASS,
    AREAL_WEIGHT,
    VOLUME,
    CONCENTRATION,
    DURATION,
    TEMPERATURE
}
