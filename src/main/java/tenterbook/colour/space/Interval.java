package tenterbook.colour.space;

/**
 * The interval in which a figure plausibly lies; 95 % unless documented otherwise where it is computed.
 *
 * @param low lower end, may be negative infinity where the data set no lower end
 * @param high upper end, not below {@code low}, may be infinity where the data set no upper end
 */
public record Interval(double low, double high) {
    /** @throws IllegalStateException if an end is NaN or the ends are in the wrong order */
    public Interval {
        if (!(low <= high)) {
            throw new IllegalStateException(
                    "An interval runs from its low end to its high end; found: %s to %s".formatted(low, high));
        }
    }

    public boolean holds(double value) {
        return low <= value && value <= high;
    }

    /** Whether both ends are finite. */
    public boolean bounded() {
        return Double.isFinite(low) && Double.isFinite(high);
    }
}
