package tenterbook.material;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What a lot is used as. */
public enum Role implements Worded {
    DYE("dye"),
    MORDANT("mordant"),
    /** Neither colours nor fixes by itself: lime, fructose, soda, vinegar, tartar. */
    ASSISTANT("assistant");

    private final String word;

    Role(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("material.role." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
