package tenterbook.recipe;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** The work of one step, in the usual order. */
public enum StepKind implements Worded {
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
    public Message word() {
        return Message.of("recipe.step." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
