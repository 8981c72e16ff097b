package tenterbook.ledger;

import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.JdbiException;
import tenterbook.measure.Digest;

/** Reads the whole ledger and says everything that is wrong with it, not only the first fault. */
public final class LedgerCheck {
    private static final int PAGE = 1000;
    private final Database database;

    LedgerCheck(Database database) {
        this.database = database;
    }

    /**
     * Recomputes every hash, follows the chain, counts sequences and versions, compares {@code current} with the
     * revisions, looks at how the ledger is built, and asks SQLite about its file and its foreign keys. What cannot be
     * read is a finding, and the rest is looked at all the same.
     *
     * @param progress told the last sequence looked at
     * @throws Progress.Cancelled if asked to stop
     */
    public List<Finding> run(Progress progress) {
        List<Finding> findings = new ArrayList<>();
        look(findings, () -> findings.addAll(schema()));
        look(findings, () -> file(findings));
        look(findings, () -> chain(findings, progress));
        return findings;
    }

    /** How the ledger is built alone: a table, view, index or trigger that is not ours, is changed or is missing. */
    public List<Finding> schema() {
        return database.read(SchemaCheck::run);
    }

    private static void look(List<Finding> findings, Runnable part) {
        try {
            part.run();
        } catch (JdbiException | IllegalArgumentException | DateTimeException e) {
            findings.add(new Finding("ledger.db", "cannot be read to its end: " + e.getMessage()));
        }
    }

    private void file(List<Finding> findings) {
        database.read(handle -> {
            handle.createQuery("PRAGMA integrity_check").mapTo(String.class).list().stream()
                    .filter(line -> !line.equals("ok"))
                    .forEach(line -> findings.add(new Finding("ledger.db", line)));
            handle.createQuery("PRAGMA foreign_key_check")
                    .mapToMap()
                    .list()
                    .forEach(
                            row -> findings.add(new Finding("ledger.db", "a row names one that is not there: " + row)));
            return null;
        });
    }

    private void chain(List<Finding> findings, Progress progress) {
        Map<RecordKey, Integer> versions = new HashMap<>();
        Map<RecordKey, Long> newest = new HashMap<>();
        long end = database.read(Rows::lastSequence);
        long sequence = 0;
        Digest last = Revision.NONE;
        while (sequence < end) {
            List<Revision> page = page(sequence, findings);
            if (page.isEmpty()) {
                break;
            }
            for (Revision revision : page) {
                String where = "revision %d (%s)".formatted(revision.sequence(), revision.key());
                if (revision.sequence() != sequence + 1) {
                    findings.add(
                            new Finding(where, "follows revision %d: one or more are missing".formatted(sequence)));
                }
                if (!revision.previous().equals(last)) {
                    findings.add(new Finding(where, "does not name the hash of the revision before it"));
                }
                if (!revision.computedHash().equals(revision.hash())) {
                    findings.add(new Finding(
                            where, "its contents do not give its hash: it was changed after it was written"));
                }
                if (!isCanonical(revision.json())) {
                    findings.add(new Finding(where, "its record is not in canonical form (RFC 8785)"));
                }
                int version = versions.merge(revision.key(), 1, Integer::sum);
                if (version != revision.version()) {
                    findings.add(new Finding(
                            where, "is version %d where %d was due".formatted(revision.version(), version)));
                }
                newest.put(revision.key(), revision.sequence());
                sequence = revision.sequence();
                last = revision.hash();
            }
            progress.at(sequence, end, "following the chain");
            progress.orStop();
        }
        current(findings, newest);
    }

    /** The next revisions that can be read; one that cannot is a finding of its own, and the chain then shows a gap. */
    private List<Revision> page(long from, List<Finding> findings) {
        try {
            return database.read(handle -> Rows.after(handle, from, PAGE));
        } catch (JdbiException | IllegalArgumentException | DateTimeException e) {
            List<Revision> readable = new ArrayList<>();
            for (long before : database.read(handle -> Rows.sequencesAfter(handle, from, PAGE))) {
                try {
                    readable.addAll(database.read(handle -> Rows.after(handle, before - 1, 1)));
                } catch (JdbiException | IllegalArgumentException | DateTimeException unreadable) {
                    findings.add(new Finding("revision " + before, "cannot be read: " + unreadable.getMessage()));
                }
            }
            return readable;
        }
    }

    private static boolean isCanonical(String json) {
        try {
            return Canonical.json(json).equals(json);
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    private void current(List<Finding> findings, Map<RecordKey, Long> newest) {
        Map<RecordKey, Long> listed = new HashMap<>();
        database.read(handle -> {
            handle.createQuery("SELECT kind, id, sequence FROM current")
                    .map((row, context) ->
                            listed.put(new RecordKey(row.getString(1), row.getString(2)), row.getLong(3)))
                    .list();
            return null;
        });
        newest.forEach((key, sequence) -> {
            Long found = listed.remove(key);
            if (!sequence.equals(found)) {
                findings.add(new Finding(
                        key.toString(), "its newest revision is %d, but ‘current’ says %s".formatted(sequence, found)));
            }
        });
        listed.keySet()
                .forEach(key -> findings.add(new Finding(key.toString(), "stands in ‘current’ without a revision")));
    }
}
