package tenterbook.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * A record as it stands in one revision.
 *
 * @param version of the record, from 1; which an edit states as its base
 * @param withdrawn whether the record has been taken out of use
 */
public record Saved<T>(T record, int version, long sequence, Instant writtenAt, String author, boolean withdrawn) {
    /** @throws Unreadable if the text is not a record of that kind */
    static <T> T record(Kind<T> kind, String id, String text) {
        return read(kind, Message.of("ledger.newest-of", "record", kind.key(id)), text);
    }

    static <T> Saved<T> of(Kind<T> kind, Revision revision) {
        return new Saved<>(
                read(
                        kind,
                        Message.of("ledger.revision-begins", "sequence", revision.sequence(), "record", revision.key()),
                        revision.json()),
                revision.version(),
                revision.sequence(),
                revision.writtenAt(),
                revision.author(),
                revision.withdrawn());
    }

    static <T> Saved<T> of(Kind<T> kind, Newest newest) {
        return new Saved<>(
                read(
                        kind,
                        Message.of("ledger.revision-begins", "sequence", newest.sequence(), "record", newest.key()),
                        newest.json()),
                newest.version(),
                newest.sequence(),
                newest.writtenAt(),
                newest.author(),
                newest.withdrawn());
    }

    private static <T> T read(Kind<T> kind, Message what, String text) {
        try {
            T record = kind.codec().fromText(text);
            // A record without its identifier would fail wherever it is used.
            if (record == null || kind.id().apply(record) == null) {
                throw unreadable(kind, what, Message.of("ledger.no-identifier"), null);
            }
            return record;
        } catch (IllegalArgumentException e) {
            throw unreadable(kind, what, Explained.of(e), e);
        } catch (NullPointerException e) {
            throw unreadable(kind, what, Message.of("ledger.no-identifier"), e);
        }
    }

    private static Unreadable unreadable(Kind<?> kind, Message what, Written why, @Nullable Exception cause) {
        return new Unreadable(Message.of("ledger.unreadable", "what", what, "kind", kind.called(), "why", why), cause);
    }
}
