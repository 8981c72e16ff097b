package tenterbook.ledger;

/**
 * One thing that a check found wrong.
 *
 * @param where the revision, record, file or index entry
 * @param what expected and found, in a sentence
 */
public record Finding(String where, String what) {
    @Override
    public String toString() {
        return where + ": " + what;
    }
}
