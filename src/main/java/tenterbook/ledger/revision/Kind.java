package tenterbook.ledger.revision;

import java.util.Collection;
import java.util.function.Function;
import tenterbook.words.Joined;
import tenterbook.words.Written;

/**
 * A kind of record that the archive keeps.
 *
 * @param name in the ledger, as in {@code board-pair}; never changed once used
 * @param called what a person calls one, as in 'board pair'; its {@code toString()} is English
 * @param type the immutable Java record
 * @param codec how it becomes JSON and back
 * @param id the identifier of a record of this kind
 * @param references the records it names
 * @param privacy what of it is private
 * @param parts the parts of it that others name, and those of others that it names
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
    /** A kind of which no part is named by another, and which names none. */
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

    /** A kind of which only author and note are private, with a name in one language. */
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
