package tenterbook.exchange.sheet;

import tenterbook.words.Message;
import tenterbook.words.Worded;

/** What an import does with a row. */
public enum Verdict implements Worded {
    NEW("new"),
    UPDATED("updated"),
    UNCHANGED("unchanged"),
    /** It would change a record that is there already, and those are left as they are by choice. */
    LEFT("left"),
    REFUSED("refused");

    private final String word;

    Verdict(String word) {
        this.word = word;
    }

    @Override
    public Message word() {
        return Message.of("import.verdict." + word);
    }

    /** As in addresses. */
    @Override
    public String toString() {
        return word;
    }
}
