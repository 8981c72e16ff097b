package tenterbook.ledger.revision;

import java.util.Collection;
import java.util.function.Function;
import tenterbook.words.Written;

/**
 * A kind of record that the archive keeps.
 *
 * @param name stored name, as in {@code board-pair}; never changes
 * @param called name for people, as in 'board pair'; its {@code toString()} is English
 * @param codec conversion to JSON and back
 * @param id the identifier of a record of this kind
 * @param references the records that it refers to
 * @param privacy its private fields
 * @param parts its parts that others refer to, and parts of others that it refers to
 */
public record Kind<T>(
        String name,
        Written called,
        RecordCodec<T> codec,
        Function<T, String> id,
        Function<T, Collection<RecordKey>> references,
        Privacy privacy,
        NamedParts<T> parts) {
    /** A kind without private fields, and without references to or from parts of records. */
    public Kind(
            String name,
            Written called,
            RecordCodec<T> codec,
            Function<T, String> id,
            Function<T, Collection<RecordKey>> references) {
        this(name, called, codec, id, references, Privacy.NONE, NamedParts.none());
    }

    public Kind<T> withPrivacy(Privacy fields) {
        return new Kind<>(name, called, codec, id, references, fields, parts);
    }

    public Kind<T> withParts(NamedParts<T> named) {
        return new Kind<>(name, called, codec, id, references, privacy, named);
    }

    public RecordKey key(String id) {
        return new RecordKey(name, id);
    }
}
