package tenterbook.ledger;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import tenterbook.ledger.file.ArchivalCopy;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Database;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.ledger.revision.EarlierPart;
import tenterbook.ledger.revision.Erasure;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * The truth of an archive: every revision of every record, in order.
 *
 * <p>Safe for many threads. Reads see only whole transactions. Followers are told after each write, on the writer's
 * thread; they must be quick and catch up from {@link #after}.
 */
public final class Ledger implements AutoCloseable {
    private final Database database;
    private final Clock clock;
    private final KnownKinds kinds;
    private final MadeFiles files;
    private final List<Consumer<Long>> followers = new CopyOnWriteArrayList<>();

    private Ledger(Database database, Clock clock, KnownKinds kinds, MadeFiles files) {
        this.database = database;
        this.clock = clock;
        this.kinds = kinds;
        this.files = files;
    }

    /**
     * Opens the ledger of a folder, making and migrating it as needed.
     *
     * @param kinds every kind of record there may be; a record of another one is private as a whole
     * @throws ArchiveProblem if the file is damaged or written by a newer program, or is gone and its archive is not
     */
    public static Ledger open(ArchiveFolder folder, Clock clock, Collection<? extends Kind<?>> kinds) {
        return open(folder, clock, new KnownKinds(kinds, KnownKinds.randomSalts()));
    }

    static Ledger open(ArchiveFolder folder, Clock clock, KnownKinds kinds) {
        LedgerFile.in(folder.ledger().getParent()).begun();
        Database database = new Database(folder.ledger());
        Ledger ledger = new Ledger(database, clock, kinds, new MadeFiles(folder.papers(), kinds));
        if (!folder.readOnly() && database.mustForget()) {
            try {
                ledger.forget();
            } catch (ArchiveProblem e) {
                // What was erased is out of every table; the mark stays, and the next start tries again.
                LoggerFactory.getLogger(Ledger.class).warn("What was erased may still be in the archive's files", e);
            }
        }
        return ledger;
    }

    /** What one act of the user does, in one transaction: all of it or nothing. */
    public <R extends @Nullable Object> R write(String author, Function<LedgerTransaction, R> act) {
        R result = database.write(handle -> {
            LedgerTransaction writing = new LedgerTransaction(handle, clock.instant(), author, kinds);
            R made = act.apply(writing);
            writing.finish();
            return made;
        });
        long last = lastSequence();
        followers.forEach(follower -> tell(follower, last));
        return result;
    }

    /**
     * Erases a person: the record and its whole history, references to it, and private texts in which its names stand.
     * The erasure is a revision itself. Files made from words that named the person are deleted, and with them those that no
     * record names, for nothing says whom they name; so no paper may be issued meanwhile. Bags packed before, printed paper and
     * the search index are not touched here.
     *
     * @param kind one whose identifiers name persons
     * @param reason kept for ever, so it names nobody
     * @throws ArchiveProblem where there is no such person; nothing was erased
     */
    public Erased erase(String author, Kind<?> kind, String id, String reason) {
        Erased erased = write(author, act -> act.erase(kind, id, reason));
        return erased.withFiles(forget());
    }

    /**
     * Whether a text names the person of a record, by name or identifier, so that it is no reason of an erasure.
     */
    public boolean names(Kind<?> kind, String id, String text) {
        return PersonalTraces.of(kind, kind.key(id), history(kind.key(id))).inDraft(text);
    }

    /** What follows an erasure; may be done again. */
    private int forget() {
        database.forget();
        int deleted = database.read(files::deleteUnnamed);
        database.forgotten();
        return deleted;
    }

    /** Whether an erasure took particulars of a person out of the record, so that what is there is not what was saved. */
    public boolean erasedFrom(RecordKey key) {
        return history(key).stream().anyMatch(Revision::redacted);
    }

    /** What is written is written: a follower that fails catches up later and cannot make a save look lost. */
    private static void tell(Consumer<Long> follower, long last) {
        try {
            follower.accept(last);
        } catch (RuntimeException e) {
            LoggerFactory.getLogger(Ledger.class).warn("A follower failed after sequence {}; it was saved", last, e);
        }
    }

    /** The record as it now is; empty where there never was one or it has been withdrawn. */
    public <T> Optional<Saved<T>> find(Kind<T> kind, String id) {
        return database.read(handle -> LedgerSql.newest(handle, kind.key(id)))
                .filter(revision -> !revision.withdrawn())
                .map(revision -> saved(kind, revision));
    }

    /** The records of a kind in use that have these identifiers, read together; those that are not there are left out. */
    public <T> Map<String, T> records(Kind<T> kind, Collection<String> ids) {
        Map<String, T> records = new LinkedHashMap<>();
        if (!ids.isEmpty()) {
            database.read(handle -> LedgerSql.records(handle, kind.name(), ids))
                    .forEach((id, text) -> records.put(id, record(kind, id, text)));
        }
        return records;
    }

    /** When the first revision of each of these was written; those that never were are left out. */
    public Map<String, Instant> recorded(Kind<?> kind, Collection<String> ids) {
        return ids.isEmpty() ? Map.of() : database.read(handle -> LedgerSql.recorded(handle, kind.name(), ids));
    }

    /** All records of a kind that are in use, in order of identifier. */
    public <T> List<Saved<T>> all(Kind<T> kind) {
        return database.read(handle -> LedgerSql.newestOfKind(handle, kind.name())).stream()
                .map(revision -> saved(kind, revision))
                .toList();
    }

    /** The records of a kind that were saved last, newest first; those of them that cannot be read are left out. */
    public <T> List<Saved<T>> latest(Kind<T> kind, int limit) {
        List<Saved<T>> latest = new ArrayList<>();
        for (Newest revision : database.read(handle -> LedgerSql.latestOfKind(handle, kind.name(), limit))) {
            try {
                latest.add(saved(kind, revision));
            } catch (Unreadable e) {
                LoggerFactory.getLogger(Ledger.class).warn(e.getMessage());
            }
        }
        return latest;
    }

    /** Every identifier of a kind ever given, also of withdrawn records. */
    public List<String> allIdsEverUsed(Kind<?> kind) {
        return database.read(handle -> LedgerSql.identifiers(handle, kind.name()));
    }

    /** Whether a person was erased after {@code sequence}. What was derived before then may hold the name, and is made anew. */
    public boolean erasedAfter(long sequence) {
        return database.read(handle -> LedgerSql.anyAfter(handle, Erasure.KIND.name(), sequence));
    }

    /** Every revision of one record, oldest first. */
    public List<Revision> history(RecordKey key) {
        return database.read(handle -> LedgerSql.history(handle, key));
    }

    public <T> Optional<Saved<T>> version(Kind<T> kind, String id, int version) {
        return history(kind.key(id)).stream()
                .filter(revision -> revision.version() == version)
                .findFirst()
                .map(revision -> saved(kind, revision));
    }

    /** Up to {@code limit} revisions after {@code sequence}, in order. */
    public List<Revision> after(long sequence, int limit) {
        return database.read(handle -> LedgerSql.after(handle, sequence, limit));
    }

    /** Up to {@code limit} revisions of format 1 after {@code sequence} as the first of format 2 commits to them, in order. */
    public List<EarlierPart> earlierParts(long sequence, int limit) {
        return database.read(handle -> EarlierParts.after(handle, sequence, limit));
    }

    /** The newest sequence, 0 for an empty ledger. */
    public long lastSequence() {
        return database.read(LedgerSql::lastSequence);
    }

    /** The hash at the end of the chain; {@link Revision#NONE} for an empty ledger. */
    public Digest lastHash() {
        return database.read(LedgerSql::end).hash();
    }

    /** Records in use that name {@code key}. */
    public List<RecordKey> referencedBy(RecordKey key) {
        return database.read(handle -> LedgerSql.referencedBy(handle, key));
    }

    /** The identifiers of records of kind {@code by} in use that name those of kind {@code of}, by the latter; read together. */
    public Map<String, List<String>> referencedBy(Kind<?> by, Kind<?> of, Collection<String> ids) {
        return ids.isEmpty()
                ? Map.of()
                : database.read(handle -> LedgerSql.referencedBy(handle, by.name(), of.name(), ids));
    }

    /** Records that {@code key} names. */
    public List<RecordKey> names(RecordKey key) {
        return database.read(handle -> LedgerSql.names(handle, key));
    }

    /** Records of one kind in use that no record of another kind names, in order of identifier. */
    public <T> List<Saved<T>> unnamed(Kind<T> kind, Kind<?> by) {
        return database.read(handle -> LedgerSql.unnamed(handle, kind.name(), by.name())).stream()
                .map(revision -> saved(kind, revision))
                .toList();
    }

    public int count(Kind<?> kind) {
        return database.read(handle -> LedgerSql.count(handle, kind.name()));
    }

    /** Asks to be told the newest sequence after each write. */
    public void follow(Consumer<Long> follower) {
        followers.add(follower);
    }

    private <T> T record(Kind<T> kind, String id, String text) {
        return read(kind, Message.of("ledger.newest-of", "record", kind.key(id)), text);
    }

    /** @throws Unreadable if its text is no record of that kind */
    public <T> Saved<T> saved(Kind<T> kind, Revision revision) {
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

    private <T> Saved<T> saved(Kind<T> kind, Newest newest) {
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

    private <T> T read(Kind<T> kind, Message what, String text) {
        try {
            T record = kind.codec().fromText(text);
            // Without its identifier it is no record, and would fail wherever it is looked at.
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

    /** What a person has typed and not saved; not part of the ledger. */
    public Drafts drafts() {
        return new Drafts(database, clock);
    }

    /** Looks for damage; see {@link LedgerCheck}. */
    public LedgerCheck check() {
        return new LedgerCheck(database);
    }

    /** Copies the ledger as it stands, whole and settled, into a new file. */
    public void copyTo(Path target) {
        database.copyTo(target);
    }

    /**
     * Copies the ledger into a new file that is to be kept: without drafts, settled, readable from a read-only disc.
     *
     * @return the newest sequence in the copy, 0 for an empty ledger
     * @throws ArchiveProblem if the copy cannot be settled
     */
    public long copyToKeep(Path target) {
        database.copyTo(target);
        return ArchivalCopy.settle(target);
    }

    @Override
    public void close() {
        database.close();
    }
}
