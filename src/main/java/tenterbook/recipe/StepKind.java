package tenterbook.recipe;

/** The work of one step, in the usual order. */
public enum StepKind {
    PREPARATION("preparation"),
    MORDANTING("mordanting"),
    BATH("bath"),
    LOCAL_COLOUR("local colour"),
    DIPS("dips"),
    RESTING("resting"),
    WASHING("washing"),
    OTHER("other");

    private final String word;

    StepKind(String word) {
        this.word = word;
    }

    @Override
    public String toString() {
        return word;
    }
}
