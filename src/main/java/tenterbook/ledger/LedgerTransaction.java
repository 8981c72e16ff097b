package tenterbook.ledger;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Database;
import tenterbook.ledger.file.LaterNames;
import tenterbook.ledger.revision.Canonical;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.Privacy;
import tenterbook.ledger.revision.RecordCodec;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.RevisionForm;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/** One act in progress: the only way to append to the ledger. Valid only inside {@link Ledger#write}. */
public final class LedgerTransaction {
    private final Handle handle;
    private final Instant at;
    private String author;
    private final KnownKinds kinds;
    private final Map<RecordKey, Set<RecordKey>> named = new LinkedHashMap<>();
    private final Set<RecordKey> withdrawn = new LinkedHashSet<>();
    private final PartsInUse parts;
    private long sequence;
    private Digest last;
    private int lastFormat;

    LedgerTransaction(Handle handle, Instant at, String author, KnownKinds kinds) {
        this.handle = handle;
        this.kinds = kinds;
        this.at = at.truncatedTo(ChronoUnit.MILLIS);
        this.author = author;
        this.parts = new PartsInUse(handle, kinds);
        LedgerSql.End end = LedgerSql.end(handle);
        this.sequence = end.sequence();
        this.last = end.hash();
        this.lastFormat = end.format();
    }

    /** Saves a new record. */
    public <T> Saved<T> create(Kind<T> kind, T record) {
        return save(kind, record, 0, "");
    }

    /**
     * Appends a revision. A record equal to the newest revision is not written again.
     *
     * @param expected the version the change was made from; 0 for a new record
     * @throws Conflict if the newest version is another
     */
    public <T> Saved<T> save(Kind<T> kind, T record, int expected, String note) {
        return save(kind, record, null, expected, note);
    }

    /**
     * As {@link #save(Kind, Object, int, String)}, for a record made from an older revision.
     *
     * @param from stored text of the revision whose fields unknown to this program are kept; null for the newest
     */
    public <T> Saved<T> save(Kind<T> kind, T record, @Nullable String from, int expected, String note) {
        RecordKey key = kind.key(kind.id().apply(record));
        Optional<Newest> newest = LedgerSql.newest(handle, key);
        int found = newest.map(Newest::version).orElse(0);
        if (found != expected) {
            throw new Conflict(key, kind.called(), expected, found);
        }
        refuseTaken(kind, key, newest.isEmpty(), kind.laterNames().apply(record));
        String origin = from != null ? from : newest.map(Newest::json).orElse("{}");
        String text = written(kind, record, origin);
        if (newest.isPresent()
                && !newest.get().withdrawn()
                && same(kind, newest.get().json(), text)) {
            Newest same = newest.get();
            return new Saved<>(record, same.version(), same.sequence(), same.writtenAt(), same.author(), false);
        }
        Revision made = append(key, kind.privacy(), found + 1, false, text, note);
        Set<RecordKey> names = new LinkedHashSet<>(kind.references().apply(record));
        names.remove(key);
        named.put(key, names);
        withdrawn.remove(key);
        parts.saved(kind, record, newest.filter(was -> !was.withdrawn()).map(Newest::json));
        return new Saved<>(record, made.version(), made.sequence(), made.writtenAt(), author, false);
    }

    /** An identifier belongs to one record for ever, also one given later. Kinds without later ones are not looked at. */
    private void refuseTaken(Kind<?> kind, RecordKey key, boolean isNew, List<String> later) {
        List<String> names = new ArrayList<>(later);
        if (isNew && kind.named()) {
            names.add(key.id());
        }
        for (String name : names) {
            LaterNames.holder(handle, kind.name(), name)
                    .filter(holder -> !holder.equals(key.id()))
                    .ifPresent(holder -> {
                        throw new Conflict(kind.key(name), kind.called(), 0, 1);
                    });
        }
    }

    /**
     * Takes a record out of use. Its revisions stay, its identifier is never given again, and it can be brought back by
     * saving an older revision.
     *
     * @throws Conflict if the newest version is not {@code expected}
     * @throws StillReferenced at the end of the act, if another record still names it
     */
    public void withdraw(Kind<?> kind, String id, int expected, String note) {
        RecordKey key = kind.key(id);
        Newest newest = LedgerSql.newest(handle, key).orElseThrow(() -> new Conflict(key, kind.called(), expected, 0));
        if (newest.version() != expected) {
            throw new Conflict(key, kind.called(), expected, newest.version());
        }
        if (!newest.withdrawn()) {
            append(key, kind.privacy(), expected + 1, true, newest.json(), note);
            named.put(key, Set.of());
            withdrawn.add(key);
        }
    }

    /** See {@link Ledger#erase}. The erased bytes stay in the file until it is rewritten. */
    Erased erase(Kind<?> kind, String id, String reason) {
        Erasing erasing = new Erasing(handle, this, kinds, kind, id);
        if (erasing.traces().in(author)) {
            author = "";
        }
        Database.mustForget(handle);
        return erasing.run(at.atZone(ZoneOffset.UTC).toLocalDate(), reason);
    }

    /** As {@link Ledger#find}, read inside this act, so that nobody saves it in between. */
    public <T> Optional<Saved<T>> saved(Kind<T> kind, String id) {
        return LedgerSql.newest(handle, kind.key(id))
                .filter(revision -> !revision.withdrawn())
                .map(revision -> Saved.of(kind, revision));
    }

    public <T> Optional<T> find(Kind<T> kind, String id) {
        return LedgerSql.newest(handle, kind.key(id))
                .filter(revision -> !revision.withdrawn())
                .map(revision -> {
                    try {
                        return kind.codec().fromText(revision.json());
                    } catch (IllegalArgumentException e) {
                        throw new ArchiveProblem(
                                Message.of("ledger.revision-unreadable", "sequence", revision.sequence()), e);
                    }
                });
    }

    /** As {@link Ledger#idsEverUsed}, read inside this act, so that the next number is certainly free. */
    public List<String> idsEverUsed(Kind<?> kind, String start) {
        return LedgerSql.identifiers(handle, kind.name(), start);
    }

    /** The record's canonical text, with the unknown fields of {@code origin}. */
    private static <T> String written(Kind<T> kind, T record, String origin) {
        ObjectNode json = kind.codec().toJson(record);
        kind.codec().carryUnknown(RecordCodec.parsed(origin), json);
        return Canonical.json(json);
    }

    /** Whether the stored text means the same as {@code text}, also where an older program wrote it differently. */
    private static <T> boolean same(Kind<T> kind, String stored, String text) {
        if (stored.equals(text)) {
            return true;
        }
        try {
            return written(kind, kind.codec().fromText(stored), stored).equals(text);
        } catch (IllegalArgumentException unreadable) {
            return false;
        }
    }

    /**
     * Appends a revision of format 2.
     *
     * @param text the record as canonical JSON
     */
    Revision append(RecordKey key, Privacy privacy, int version, boolean withdraw, String text, String note) {
        Revision revision = new NextRevision(handle, kinds, sequence, last, lastFormat)
                .of(key, privacy, version, withdraw, text, at, author, note);
        LedgerSql.insert(handle, revision, (RevisionForm.Parted) revision.form());
        sequence = revision.sequence();
        last = revision.hash();
        lastFormat = 2;
        return revision;
    }

    /** Checks the references after all records of the act are saved. */
    void finish() {
        named.forEach((from, targets) -> {
            LedgerSql.clearReferences(handle, from);
            for (RecordKey to : targets) {
                if (LedgerSql.newest(handle, to).filter(r -> !r.withdrawn()).isEmpty()) {
                    throw StillReferenced.missing(from, to);
                }
                LedgerSql.addReference(handle, from, to);
            }
        });
        for (RecordKey key : withdrawn) {
            List<RecordKey> users = LedgerSql.referencedBy(handle, key);
            if (!users.isEmpty()) {
                throw StillReferenced.by(key, users);
            }
        }
        parts.check();
    }
}
