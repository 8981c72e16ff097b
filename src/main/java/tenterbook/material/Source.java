package tenterbook.material;

/** Where a dye or mordant comes from. */
public enum Source {
    BOTANICAL("botanical"),
    ANIMAL("animal"),
    MINERAL("mineral"),
    SYNTHETIC("synthetic"),
    UNKNOWN("unknown");

    private final String word;

    Source(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
