package tenterbook.material;

/** What a lot is used as. */
public enum Role {
    DYE("dye"),
    MORDANT("mordant"),
    /** Lime, fructose, soda, vinegar, tartar: neither colours nor fixes by itself. */
    ASSISTANT("assistant");

    private final String word;

    Role(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
