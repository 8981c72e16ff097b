package tenterbook.ledger;

import tenterbook.ledger.revision.RecordKey;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The record was saved by someone else in between. Both versions are available and neither is lost. */
public final class Conflict extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;

    private final transient Written explanation;
    private final transient RecordKey key;
    private final int expected;
    private final int found;

    Conflict(RecordKey key, Written called, int expected, int found) {
        this(message(key, called, expected, found), key, expected, found);
    }

    private Conflict(Written explanation, RecordKey key, int expected, int found) {
        super(explanation.inEnglish());
        this.explanation = explanation;
        this.key = key;
        this.expected = expected;
        this.found = found;
    }

    private static Message message(RecordKey key, Written called, int expected, int found) {
        if (expected == 0) {
            return Message.of("ledger.conflict.there", "kind", called, "id", key.id());
        }
        if (found == 0) {
            return Message.of("ledger.conflict.not-there", "kind", called, "id", key.id());
        }
        return expected > found
                ? never(key, called, expected, found)
                : Message.of(
                        "ledger.conflict.saved", "kind", called, "id", key.id(), "found", found, "expected", expected);
    }

    /** The sentence for a change made from a version that never existed. */
    public static Message never(RecordKey key, Written called, int expected, int found) {
        return Message.of(
                "ledger.conflict.never", "kind", called, "id", key.id(), "found", found, "expected", expected);
    }

    @Override
    public Written explanation() {
        return explanation;
    }

    public RecordKey key() {
        return key;
    }

    /** The version the save was made from; 0 for a new record. */
    public int expected() {
        return expected;
    }

    public int found() {
        return found;
    }
}
