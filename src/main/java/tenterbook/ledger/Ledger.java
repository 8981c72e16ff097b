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
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import tenterbook.ledger.beside.Drafts;
import tenterbook.ledger.beside.OwnWords;
import tenterbook.ledger.beside.SavedSearches;
import tenterbook.ledger.file.ArchivalCopy;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Database;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.LastWritten;
import tenterbook.ledger.file.LaterNames;
import tenterbook.ledger.file.LedgerClock;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.ledger.file.OlderLedgers;
import tenterbook.ledger.file.ReadOnlyArchive;
import tenterbook.ledger.revision.EarlierPart;
import tenterbook.ledger.revision.Erasure;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.measure.Digest;
import tenterbook.words.Message;

/**
 * Every revision of every record of an archive, in order; everything else is derived from it.
 *
 * <p>Thread-safe. Reads see only whole transactions. Followers are notified after each write, on the writer's thread; they must
 * be quick and catch up from {@link #after}.
 */
public final class Ledger implements AutoCloseable {
    private final Database database;
    private final LedgerClock clock;
    private final KnownKinds kinds;
    private final MadeFiles files;
    private final LastWritten written;
    private final ArchiveFolder folder;
    private final List<Consumer<Long>> followers = new CopyOnWriteArrayList<>();

    private Ledger(
            Database database,
            Clock clock,
            KnownKinds kinds,
            MadeFiles files,
            LastWritten written,
            ArchiveFolder folder) {
        this.database = database;
        this.clock = new LedgerClock(clock, database);
        this.kinds = kinds;
        this.files = files;
        this.written = written;
        this.folder = folder;
    }

    /**
     * Opens the ledger of a folder, creating and migrating it as needed.
     *
     * @param kinds all known kinds of record; a record of another kind is private as a whole
     * @throws ArchiveProblem if the file is damaged or written by a newer program, or is missing while the rest of the archive
     *     is there
     */
    public static Ledger open(ArchiveFolder folder, Clock clock, Collection<? extends Kind<?>> kinds) {
        return open(folder, clock, new KnownKinds(kinds, KnownKinds.randomSalts()));
    }

    static Ledger open(ArchiveFolder folder, Clock clock, KnownKinds kinds) {
        if (!LedgerFile.in(folder.ledger().getParent()).begun() && folder.readOnly()) {
            throw new ArchiveProblem(
                    Message.of("ledger.none-to-look-at", "folder", folder.root().toAbsolutePath()));
        }
        if (!folder.readOnly() && !folder.madeOfAnother()) {
            OlderLedgers.keep(folder, clock);
        }
        Database database = new Database(folder.ledger());
        LastWritten written = LastWritten.of(folder, hashes(database));
        Ledger ledger = new Ledger(database, clock, kinds, new MadeFiles(folder.papers(), kinds), written, folder);
        if (!folder.readOnly() && database.mustForget()) {
            try {
                ledger.forget();
            } catch (ArchiveProblem e) {
                // Nothing erased is in any table; the mark stays, and the next start tries again.
                LoggerFactory.getLogger(Ledger.class).warn("What was erased may still be in the archive's files", e);
            }
        }
        return ledger;
    }

    /**
     * Runs one act of the user in one transaction: all of it or nothing.
     *
     * @throws ArchiveProblem where nothing may be written ({@link ReadOnlyArchive}), the clock is in doubt ({@link
     *     LedgerClock.Doubted}), the folder is no longer held, or the disk is full or fails; nothing is written
     */
    public <R extends @Nullable Object> R write(String author, Function<LedgerTransaction, R> act) {
        if (folder.readOnly()) {
            throw new ReadOnlyArchive();
        }
        folder.mustStillBeHeld();
        clock.mustBeBelieved();
        R result = database.write(handle -> {
            LedgerTransaction writing = new LedgerTransaction(handle, clock.instant(), author, kinds);
            R made = act.apply(writing);
            writing.finish();
            return made;
        });
        LedgerSql.End end = database.read(LedgerSql::end);
        written.note(end.sequence(), end.hash());
        followers.forEach(follower -> tell(follower, end.sequence()));
        return result;
    }

    /**
     * Writes revisions of a damaged ledger into this one, which is empty; see {@link LedgerRemains.TakingOver}.
     *
     * @throws IllegalStateException if this ledger is not empty
     */
    public void takeOver(List<Revision> revisions) {
        if (lastSequence() != 0) {
            throw new IllegalStateException("Revisions are taken over into an empty ledger only");
        }
        database.write(handle -> {
            new LedgerRemains.TakingOver(handle, kinds).run(revisions);
            return null;
        });
    }

    private static LongFunction<Optional<Digest>> hashes(Database database) {
        return sequence -> database.read(handle -> LedgerSql.hash(handle, sequence));
    }

    /**
     * Whether this ledger is older than the last one written in this folder, or another: empty where it is the same or
     * nothing is known. As it was when the ledger was opened.
     */
    public Optional<Finding> behind() {
        return written.behind();
    }

    /** Whether it is known how far the ledger was written in this folder. */
    public boolean extentKnown() {
        return written.known();
    }

    /** Takes this ledger for the right one although it is older than the last one written here. */
    public void acceptAsLast() {
        LedgerSql.End end = database.read(LedgerSql::end);
        written.accept(end.sequence(), end.hash());
    }

    /**
     * Erases a person: the record and its whole history, references to it, and private texts that have its names. The erasure
     * is a revision itself. Files made from words that named the person are deleted, and so are those that no record names,
     * since it is not known whom they name; so no paper may be issued meanwhile. Bags packed before, printed paper and the
     * search index are not changed here.
     *
     * @param kind of records of persons
     * @param reason kept permanently, so it must not name anybody
     * @throws ArchiveProblem where there is no such person; nothing was erased
     */
    public Erased erase(String author, Kind<?> kind, String id, String reason) {
        Erased erased = write(author, act -> act.erase(kind, id, reason));
        return erased.withFiles(forget());
    }

    /** Whether a text names the person of a record, by name or identifier; such a text cannot be the reason of an erasure. */
    public boolean mentions(Kind<?> kind, String id, String text) {
        return PersonalTraces.of(kind, kind.key(id), history(kind.key(id))).inDraft(text);
    }

    /** What follows an erasure; may be repeated. */
    private int forget() {
        database.forget();
        OlderLedgers.delete(folder);
        int deleted = database.read(files::deleteUnnamed);
        database.forgotten();
        return deleted;
    }

    /** Whether an erasure removed particulars of a person from the record, so that it differs from what was saved. */
    public boolean erasedFrom(RecordKey key) {
        return history(key).stream().anyMatch(Revision::redacted);
    }

    /** A follower that fails is logged and catches up later, since the save itself succeeded. */
    private static void tell(Consumer<Long> follower, long last) {
        try {
            follower.accept(last);
        } catch (RuntimeException e) {
            LoggerFactory.getLogger(Ledger.class).warn("A follower failed after sequence {}; it was saved", last, e);
        }
    }

    /** The newest version of the record, by its first identifier or a later one; empty where there is none or it was withdrawn. */
    public <T> Optional<Saved<T>> find(Kind<T> kind, String id) {
        return database.read(handle -> LedgerSql.named(handle, kind.key(id)))
                .filter(revision -> !revision.withdrawn())
                .map(revision -> Saved.of(kind, revision));
    }

    /** The records in use with these identifiers, read together; missing ones are left out. */
    public <T> Map<String, T> records(Kind<T> kind, Collection<String> ids) {
        Map<String, T> records = new LinkedHashMap<>();
        if (!ids.isEmpty()) {
            database.read(handle -> LedgerSql.records(handle, kind.name(), ids))
                    .forEach((id, text) -> records.put(id, Saved.record(kind, id, text)));
        }
        return records;
    }

    /** When the first revision of each record was written; missing ones are left out. */
    public Map<String, Instant> recorded(Kind<?> kind, Collection<String> ids) {
        return ids.isEmpty() ? Map.of() : database.read(handle -> LedgerSql.recorded(handle, kind.name(), ids));
    }

    /** All records of a kind that are in use, in order of identifier. */
    public <T> List<Saved<T>> all(Kind<T> kind) {
        return database.read(handle -> LedgerSql.newestOfKind(handle, kind.name())).stream()
                .map(revision -> Saved.of(kind, revision))
                .toList();
    }

    /** The records of a kind that were saved last, newest first; those of them that cannot be read are left out. */
    public <T> List<Saved<T>> latest(Kind<T> kind, int limit) {
        List<Saved<T>> latest = new ArrayList<>();
        for (Newest revision : database.read(handle -> LedgerSql.latestOfKind(handle, kind.name(), limit))) {
            try {
                latest.add(Saved.of(kind, revision));
            } catch (Unreadable e) {
                LoggerFactory.getLogger(Ledger.class).warn(e.getMessage());
            }
        }
        return latest;
    }

    /** Every identifier of a kind ever used, also of withdrawn records. */
    public List<String> allIdsEverUsed(Kind<?> kind) {
        return database.read(handle -> LedgerSql.identifiers(handle, kind.name()));
    }

    /** Every identifier of a kind ever used that begins with {@code start}, whatever the case of its letters; perhaps some more. */
    public List<String> idsEverUsed(Kind<?> kind, String start) {
        return database.read(handle -> LedgerSql.identifiers(handle, kind.name(), start));
    }

    /** Identifiers of a kind that records were ever given after their first one. */
    public List<String> laterNames(Kind<?> kind) {
        return database.read(handle -> LaterNames.all(handle, kind.name()));
    }

    /** The first identifier of the record that has or had {@code name}, in small or capital letters too; empty where it is free. */
    public Optional<String> holder(Kind<?> kind, String name) {
        return database.read(handle -> LaterNames.holder(handle, kind.name(), name));
    }

    /**
     * A text of records in use, by identifier; those without it are left out. Quick where the ledger has an index of those that have it.
     *
     * @param member of the record as it is stored
     */
    public Map<String, String> texts(Kind<?> kind, String member) {
        return database.read(handle -> LedgerSql.texts(handle, kind.name(), member));
    }

    /** Whether a person was erased after {@code sequence}. What was derived before may have the name and must be rebuilt. */
    public boolean erasedAfter(long sequence) {
        return database.read(handle -> LedgerSql.anyAfter(handle, Erasure.KIND.name(), sequence));
    }

    /** Every revision of one record, oldest first. */
    public List<Revision> history(RecordKey key) {
        return database.read(handle -> LedgerSql.history(handle, LedgerSql.first(handle, key)));
    }

    public <T> Optional<Saved<T>> version(Kind<T> kind, String id, int version) {
        return history(kind.key(id)).stream()
                .filter(revision -> revision.version() == version)
                .findFirst()
                .map(revision -> Saved.of(kind, revision));
    }

    /** Up to {@code limit} revisions after {@code sequence}, in order. */
    public List<Revision> after(long sequence, int limit) {
        return database.read(handle -> LedgerSql.after(handle, sequence, limit));
    }

    /** Up to {@code limit} revisions of format 1 after {@code sequence}, as the first of format 2 commits to them, in order. */
    public List<EarlierPart> earlierParts(long sequence, int limit) {
        return database.read(handle -> EarlierParts.after(handle, sequence, limit));
    }

    /** What each revision gets its time from. */
    public LedgerClock clock() {
        return clock;
    }

    /** The newest sequence, 0 for an empty ledger. */
    public long lastSequence() {
        return database.read(LedgerSql::lastSequence);
    }

    /** The hash at the end of the chain; {@link Revision#NONE} for an empty ledger. */
    public Digest lastHash() {
        return database.read(LedgerSql::end).hash();
    }

    /** Records in use that refer to {@code key}. */
    public List<RecordKey> referencedBy(RecordKey key) {
        return database.read(handle -> LedgerSql.referencedBy(handle, LedgerSql.first(handle, key)));
    }

    /**
     * The identifiers of records of kind {@code by} in use that refer to those of kind {@code of}, by the latter; read
     * together.
     */
    public Map<String, List<String>> referencedBy(Kind<?> by, Kind<?> of, Collection<String> ids) {
        return ids.isEmpty()
                ? Map.of()
                : database.read(handle -> LedgerSql.referencedBy(handle, by.name(), of.name(), ids));
    }

    /** Records that {@code key} refers to. */
    public List<RecordKey> references(RecordKey key) {
        return database.read(handle -> LedgerSql.references(handle, key));
    }

    /** Records of one kind in use that no record of another kind refers to, in order of identifier. */
    public <T> List<Saved<T>> unreferenced(Kind<T> kind, Kind<?> by) {
        return database.read(handle -> LedgerSql.unreferenced(handle, kind.name(), by.name())).stream()
                .map(revision -> Saved.of(kind, revision))
                .toList();
    }

    public int count(Kind<?> kind) {
        return database.read(handle -> LedgerSql.count(handle, kind.name()));
    }

    /** Adds a follower, which gets the newest sequence after each write. */
    public void follow(Consumer<Long> follower) {
        followers.add(follower);
    }

    /** @throws Unreadable if its text is not a record of that kind */
    public <T> Saved<T> saved(Kind<T> kind, Revision revision) {
        return Saved.of(kind, revision);
    }

    /** Forms typed and not saved; not part of the chain. */
    public Drafts drafts() {
        return new Drafts(database, clock);
    }

    /** Searches kept under a name; not part of the chain. */
    public SavedSearches savedSearches() {
        return new SavedSearches(database, clock);
    }

    /** The maker's own words for what is recorded; not part of the chain. */
    public OwnWords ownWords() {
        return new OwnWords(database);
    }

    /** Looks for damage; see {@link LedgerCheck}. */
    public LedgerCheck check() {
        return new LedgerCheck(database);
    }

    /** Copies the whole ledger into a new file. */
    public void copyTo(Path target) {
        database.copyTo(target);
    }

    /**
     * Copies the ledger into a new file for long keeping: without drafts and removed searches, and readable from a read-only disc.
     *
     * @return the newest sequence in the copy, 0 for an empty ledger
     * @throws ArchiveProblem if the copy cannot be prepared
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
