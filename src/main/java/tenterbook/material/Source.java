package tenterbook.material;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** Where a dye or mordant comes from. */
public enum Source implements Worded {
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
    public Message word() {
        return Message.of("material.source." + word.replace(' ', '-'));
    }

    @Override
    public String toString() {
        return word;
    }
}
