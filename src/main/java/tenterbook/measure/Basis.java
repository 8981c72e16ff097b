package tenterbook.measure;

/** How a quantity is known. */
public enum Basis {
    MEASURED("measured"),
    ESTIMATED("estimated"),
    REMEMBERED("remembered"),
    COMPUTED("computed"),
    /** Either the value itself is unknown, or there is a value and nobody said where it came from. */
    UNKNOWN("unknown");

    private final String word;

    Basis(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
