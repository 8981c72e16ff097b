package tenterbook.ledger;

/**
 * Names one record in the archive.
 *
 * @param kind the name of its kind, as in {@code piece}
 * @param id its identifier within the kind
 */
public record RecordKey(String kind, String id) {
    public RecordKey {
        if (kind == null || kind.isBlank() || id == null || id.isBlank()) {
            throw new IllegalArgumentException("A record is named by its kind and its identifier");
        }
    }

    @Override
    public String toString() {
        return kind + " " + id;
    }
}
