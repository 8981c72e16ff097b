package tenterbook.ledger;

import java.util.List;
import java.util.stream.Collectors;

/** A record cannot be withdrawn, or another cannot be saved, because of what names or is named by it. */
public final class StillNamed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private StillNamed(String message) {
        super(message);
    }

    static StillNamed by(RecordKey key, List<RecordKey> users) {
        String some = users.stream().limit(5).map(RecordKey::toString).collect(Collectors.joining(", "));
        String more = users.size() > 5 ? " and %d more".formatted(users.size() - 5) : "";
        return new StillNamed(
                "The %s cannot be withdrawn: it is named by %s%s. Change those first; nothing was changed."
                        .formatted(key, some, more));
    }

    static StillNamed missing(RecordKey from, RecordKey to) {
        return new StillNamed(
                "The %s names the %s, which is not in the archive. Record that first, or leave it out; nothing was changed."
                        .formatted(from, to));
    }
}
