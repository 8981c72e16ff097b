package tenterbook.ledger.revision;

import java.util.Collection;
import java.util.function.Function;
import tenterbook.words.Joined;
import tenterbook.words.Written;

/**
 * A kind of record that the archive keeps.
 *
 * @param name stored name, as in {@code board-pair}; never changes
 * @param called name for people, as in 'board pair'; its {@code toString()} is English
 * @param type the immutable Java record
 * @param codec conversion to JSON and back
 * @param id the identifier of a record of this kind
 * @param references the records that it refers to
 * @param privacy its private fields
 * @param parts its parts that others refer to, and parts of others that it refers to
 */
public record Kind<T>(
        String name,
        Written called,
        Class<T> type,
        RecordCodec<T> codec,
        Function<T, String> id,
        Function<T, Collection<RecordKey>> references,
        Privacy privacy,
        NamedParts<T> parts) {
    /** A kind without references to or from parts of records. */
    public Kind(
            String name,
            Written called,
            Class<T> type,
            RecordCodec<T> codec,
            Function<T, String> id,
            Function<T, Collection<RecordKey>> references,
            Privacy privacy) {
        this(name, called, type, codec, id, references, privacy, NamedParts.none());
    }

    /** A kind without private fields, with a name in one language. */
    public Kind(
            String name,
            String called,
            Class<T> type,
            RecordCodec<T> codec,
            Function<T, String> id,
            Function<T, Collection<RecordKey>> references) {
        this(name, Joined.with("", called), type, codec, id, references, Privacy.NONE);
    }

    public RecordKey key(String id) {
        return new RecordKey(name, id);
    }
}
