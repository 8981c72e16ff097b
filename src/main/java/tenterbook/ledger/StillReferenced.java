package tenterbook.ledger;

import java.util.List;
import java.util.stream.Collectors;
import tenterbook.ledger.revision.NamedParts;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** A record cannot be withdrawn, or another cannot be saved, because of references. */
public final class StillReferenced extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;

    private final transient Written explanation;

    private StillReferenced(Written explanation) {
        super(explanation.inEnglish());
        this.explanation = explanation;
    }

    @Override
    public Written explanation() {
        return explanation;
    }

    static StillReferenced by(RecordKey key, List<RecordKey> users) {
        String some = users.stream().limit(5).map(RecordKey::toString).collect(Collectors.joining(", "));
        return new StillReferenced(
                Message.of("ledger.still-named", "record", key, "users", some, "more", Math.max(0, users.size() - 5)));
    }

    /** A part that a record would lose is referred to by {@code users}. */
    static StillReferenced part(NamedParts.Use lost, List<RecordKey> users) {
        String some = users.stream().limit(5).map(RecordKey::toString).collect(Collectors.joining(", "));
        return new StillReferenced(Message.of(
                "ledger.part-still-named",
                "record",
                lost.record(),
                "part",
                lost.part(),
                "users",
                some,
                "more",
                Math.max(0, users.size() - 5)));
    }

    static StillReferenced missing(RecordKey from, NamedParts.Use to) {
        return new StillReferenced(
                Message.of("ledger.names-missing-part", "record", from, "part", to.part(), "other", to.record()));
    }

    static StillReferenced missing(RecordKey from, RecordKey to) {
        return new StillReferenced(Message.of("ledger.names-missing", "record", from, "missing", to));
    }
}
