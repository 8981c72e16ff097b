package tenterbook.colour.space;

/**
 * Where a figure plausibly lies. What share of cases it should hold (95 % unless said) stands with whoever gives it.
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

    /** An interval without width. */
    public static Interval exactly(double value) {
        return new Interval(value, value);
    }

    public boolean holds(double value) {
        return low <= value && value <= high;
    }

    /** Whether both ends are finite, so that the data say something on both sides. */
    public boolean bounded() {
        return Double.isFinite(low) && Double.isFinite(high);
    }
}
