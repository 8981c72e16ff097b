package tenterbook.ledger;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Database;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.ledger.revision.ChainText;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.KnownKinds;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.ledger.revision.RevisionForm.Parted;

/**
 * The revisions that can still be read of a ledger, damaged or not.
 *
 * @param origin the file they were read from, for messages
 * @param revisions by sequence, whole or not
 * @param highest the highest sequence that is known of, also where it cannot be read
 */
public record LedgerRemains(String origin, NavigableMap<Long, Revision> revisions, long highest) {
    private static final Logger LOG = LoggerFactory.getLogger(LedgerRemains.class);

    /** Sequences tried after the last that could be read, where the end of the ledger cannot be. */
    private static final int BEYOND = 2000;

    /** @param copy a copy of a ledger's file that may be written, alone in its folder but for its log */
    public static LedgerRemains ofDatabase(String origin, Path copy) {
        NavigableMap<Long, Revision> found = new TreeMap<>();
        long highest = 0;
        try {
            if (LedgerFile.in(copy.getParent()).begun()) {
                try (Database database = new Database(copy)) {
                    highest = readAll(database, found);
                }
            }
        } catch (ArchiveProblem | JdbiException e) {
            LOG.info("{} cannot be opened as a ledger: {}", origin, e.getMessage());
        }
        return new LedgerRemains(origin, found, Math.max(highest, found.isEmpty() ? 0 : found.lastKey()));
    }

    private static long readAll(Database database, NavigableMap<Long, Revision> found) {
        long end;
        try {
            end = database.read(LedgerSql::lastSequence);
        } catch (JdbiException e) {
            end = Long.MAX_VALUE;
        }
        long failed = 0;
        for (long sequence = 1; sequence <= end && failed < BEYOND; sequence++) {
            long before = sequence - 1;
            try {
                List<Revision> one = database.read(handle -> LedgerSql.after(handle, before, 1));
                if (one.isEmpty()) {
                    break;
                }
                sequence = one.get(0).sequence();
                found.put(sequence, one.get(0));
                failed = 0;
            } catch (JdbiException | IllegalArgumentException | DateTimeException e) {
                failed++;
            }
        }
        return end == Long.MAX_VALUE ? 0 : end;
    }

    /** Of the plain text that a bag holds; lines that cannot be read are passed over. */
    public static LedgerRemains ofText(String origin, Path file) throws IOException {
        NavigableMap<Long, Revision> found = new TreeMap<>();
        // Wrong bytes become replacement characters, so that one damaged line costs no other.
        try (BufferedReader lines =
                new BufferedReader(new InputStreamReader(Files.newInputStream(file), StandardCharsets.UTF_8))) {
            String line = lines.readLine();
            while (line != null) {
                String next = lines.readLine();
                boolean takes = ChainText.goesOn(line) && next != null && next.contains("\"content_of\":");
                ChainText.read(line, takes ? next : null)
                        .ifPresent(revision -> found.put(revision.sequence(), revision));
                line = takes ? lines.readLine() : next;
            }
        }
        return new LedgerRemains(origin, found, found.isEmpty() ? 0 : found.lastKey());
    }

    /** Whether a revision is as it was written. One that an erasure touched in format 1 cannot be compared and counts as not. */
    public static boolean whole(Revision revision) {
        return revision.computedHash().equals(revision.hash());
    }

    /** How many are as they were written. */
    public long wholeCount() {
        return revisions.values().stream().filter(LedgerRemains::whole).count();
    }

    /** The revision of a place of another chain, where the hashes beside it show that it belongs there; else null. */
    public @Nullable Revision fitting(long sequence, NavigableMap<Long, Revision> chain) {
        Revision mine = revisions.get(sequence);
        if (mine == null || !whole(mine)) {
            return null;
        }
        Revision before = chain.get(sequence - 1);
        Revision after = chain.get(sequence + 1);
        boolean fits = before != null && mine.previous().equals(before.hash())
                || after != null && after.previous().equals(mine.hash());
        return fits ? mine : null;
    }

    /**
     * Writes revisions of a damaged ledger into an empty one, in their order and with their times, authors and notes. The chain is a
     * new one: its hashes are not those of the old ledger. Within one transaction.
     */
    static final class TakingOver {
        private final Handle handle;
        private final KnownKinds kinds;
        private final Map<RecordKey, Integer> versions = new HashMap<>();

        TakingOver(Handle handle, KnownKinds kinds) {
            this.handle = handle;
            this.kinds = kinds;
        }

        void run(Iterable<Revision> revisions) {
            for (Revision old : revisions) {
                LedgerSql.End end = LedgerSql.end(handle);
                Revision made = new NextRevision(handle, kinds, end.sequence(), end.hash(), end.format())
                        .of(
                                old.key(),
                                kinds.privacy(old.key().kind()),
                                versions.merge(old.key(), 1, Integer::sum),
                                old.withdrawn(),
                                old.json(),
                                old.writtenAt(),
                                old.author(),
                                old.note());
                LedgerSql.insert(handle, made, (Parted) made.form());
            }
            versions.keySet().forEach(this::references);
        }

        /** A record that is lost cannot be referred to in the table; the check of the new ledger names whoever still does. */
        private void references(RecordKey key) {
            LedgerSql.newest(handle, key).filter(newest -> !newest.withdrawn()).ifPresent(newest -> {
                Set<RecordKey> targets = new LinkedHashSet<>(kinds.kind(key.kind())
                        .map(kind -> named(kind, newest.json()))
                        .orElse(Set.of()));
                targets.remove(key);
                targets.stream()
                        .filter(versions::containsKey)
                        .forEach(target -> LedgerSql.addReference(handle, key, target));
            });
        }

        private static <T> Set<RecordKey> named(Kind<T> kind, String json) {
            return new LinkedHashSet<>(kind.references().apply(kind.codec().fromText(json)));
        }
    }
}
