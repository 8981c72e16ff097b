package tenterbook.ledger.revision;

import tenterbook.words.Refusal;

/**
 * Names one record in the archive.
 *
 * @param kind the name of its kind, as in {@code piece}
 * @param id its identifier within the kind
 */
public record RecordKey(String kind, String id) {
    public RecordKey {
        if (kind == null || kind.isBlank() || id == null || id.isBlank()) {
            throw Refusal.of("ledger.unnamed");
        }
    }

    @Override
    public String toString() {
        return kind + " " + id;
    }
}
