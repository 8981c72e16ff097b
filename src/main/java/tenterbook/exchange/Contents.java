package tenterbook.exchange;

import tenterbook.words.Message;

/**
 * How much of an archive a bag holds. Written into {@code bag-info.txt}; a bag with an unknown word is not restored, so that a
 * partial export is never taken for a full backup.
 */
public enum Contents {
    EVERYTHING("everything", "exchange.pack.privacy");

    static final String LABEL = "Tenterbook-Contents";
    private final String word;
    private final String key;

    Contents(String word, String key) {
        this.word = word;
        this.key = key;
    }

    String word() {
        return word;
    }

    /** What a person must know before handing the bag on. */
    public Message privacy() {
        return Message.of(key);
    }
}
