package tenterbook.ledger.revision;

import java.util.Collection;
import java.util.List;
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
 * @param laterNames further identifiers of a record that lead to it too; never given to another
 * @param parts its parts that others refer to, and parts of others that it refers to
 */
public record Kind<T>(
        String name,
        Written called,
        RecordCodec<T> codec,
        Function<T, String> id,
        Function<T, Collection<RecordKey>> references,
        Function<? super T, List<String>> laterNames,
        Privacy privacy,
        NamedParts<T> parts) {
    private static final Function<Object, List<String>> NO_NAMES = record -> List.of();

    /** A kind without private fields, and without references to or from parts of records. */
    public Kind(
            String name,
            Written called,
            RecordCodec<T> codec,
            Function<T, String> id,
            Function<T, Collection<RecordKey>> references) {
        this(name, called, codec, id, references, NO_NAMES, Privacy.NONE, NamedParts.none());
    }

    public Kind<T> withPrivacy(Privacy fields) {
        return new Kind<>(name, called, codec, id, references, laterNames, fields, parts);
    }

    public Kind<T> withParts(NamedParts<T> named) {
        return new Kind<>(name, called, codec, id, references, laterNames, privacy, named);
    }

    /** Whether records of this kind can be given later identifiers. */
    public boolean named() {
        return !laterNames.equals(NO_NAMES);
    }

    /** @param names stored in the member {@code laterNumbers} of a record of this kind, a list of texts */
    public Kind<T> withLaterNames(Function<T, List<String>> names) {
        return new Kind<>(name, called, codec, id, references, names, privacy, parts);
    }

    public RecordKey key(String id) {
        return new RecordKey(name, id);
    }
}
