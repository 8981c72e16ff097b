package tenterbook.ledger;

/** Someone else saved the record in between. Both versions are in hand and neither is lost. */
public final class Conflict extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient RecordKey key;
    private final int expected;
    private final int found;

    Conflict(RecordKey key, String called, int expected, int found) {
        super(message(key, called, expected, found));
        this.key = key;
        this.expected = expected;
        this.found = found;
    }

    private static String message(RecordKey key, String called, int expected, int found) {
        if (expected == 0) {
            return "There is already a %s %s (or was one: a number or name is never given twice). Nothing was changed; choose another."
                    .formatted(called, key.id());
        }
        if (found == 0) {
            return "There is no %s %s to change. Nothing was changed; look for it under another name."
                    .formatted(called, key.id());
        }
        return "The %s %s was saved as version %d while you were working from version %d. Nothing was lost: both are shown."
                .formatted(called, key.id(), found, expected);
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
