package tenterbook.ledger;

import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.JdbiException;
import tenterbook.ledger.file.Database;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.file.SchemaCheck;
import tenterbook.ledger.revision.EarlierPart;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/** Reads the whole ledger and reports everything wrong with it, not only the first fault. */
public final class LedgerCheck {
    private static final int PAGE = 1000;
    private final Database database;

    LedgerCheck(Database database) {
        this.database = database;
    }

    /**
     * Recomputes every hash and digest, checks the chain, sequences and versions, compares {@code current} with the revisions
     * and missing parts with the erasures, checks the schema, and runs SQLite's checks of its file and foreign keys. What
     * cannot be read is a finding, and the rest is checked all the same.
     *
     * @param progress reports the last sequence checked
     * @throws Progress.Cancelled if asked to stop
     */
    public List<Finding> run(Progress progress) {
        List<Finding> findings = new ArrayList<>();
        look(findings, () -> findings.addAll(schema()));
        look(findings, () -> file(findings));
        look(findings, () -> chain(findings, progress));
        return findings;
    }

    /**
     * Revisions of which it cannot be checked whether the private part is as an erasure left it, since an older program erased
     * them without committing to that. Not damage.
     */
    public List<Finding> notCheckable() {
        return database.read(Erasures::read).notCheckable().stream()
                .map(sequence -> new Finding(
                        Message.of("ledger.check.revision-alone", "sequence", sequence),
                        Message.of("ledger.check.not-checkable")))
                .toList();
    }

    /** Checks the schema only: a table, view, index or trigger that is added, changed or missing. */
    public List<Finding> schema() {
        return database.read(SchemaCheck::run);
    }

    /** Whether every table is there, so that more than the chain can be checked. */
    public boolean canBeRead() {
        return database.read(SchemaCheck::hasAllTables);
    }

    private static void look(List<Finding> findings, Runnable part) {
        try {
            part.run();
        } catch (JdbiException | IllegalArgumentException | DateTimeException e) {
            findings.add(new Finding("ledger.db", Message.of("ledger.check.not-to-end", "why", Explained.of(e))));
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
                    .forEach(row ->
                            findings.add(new Finding("ledger.db", Message.of("ledger.check.dangling", "row", row))));
            return null;
        });
    }

    private void chain(List<Finding> findings, Progress progress) {
        Erasures erasures = database.read(Erasures::read);
        erasures.disagreements().forEach(findings::add);
        ChainCheck chain = new ChainCheck(database.read(Handles::all), erasures, findings);
        earlier(chain, progress);
        long end = database.read(LedgerSql::lastSequence);
        long sequence = 0;
        while (sequence < end) {
            List<Revision> page = page(sequence, findings);
            if (page.isEmpty()) {
                break;
            }
            page.forEach(chain::next);
            sequence = page.get(page.size() - 1).sequence();
            progress.at(sequence, end, Message.of("ledger.check.following"));
            progress.orStop();
        }
        database.read(handle -> {
            new CurrentCheck(handle, chain, findings).run();
            return null;
        });
    }

    private void earlier(ChainCheck chain, Progress progress) {
        long sequence = 0;
        List<EarlierPart> page;
        do {
            long from = sequence;
            page = database.read(handle -> EarlierParts.after(handle, from, PAGE));
            for (EarlierPart part : page) {
                chain.earlier(part);
                sequence = part.revision().sequence();
            }
            progress.orStop();
        } while (!page.isEmpty());
    }

    /** The next readable revisions; an unreadable one is a finding, and the chain then has a gap. */
    private List<Revision> page(long from, List<Finding> findings) {
        try {
            return database.read(handle -> LedgerSql.after(handle, from, PAGE));
        } catch (JdbiException | IllegalArgumentException | DateTimeException e) {
            List<Revision> readable = new ArrayList<>();
            for (long before : database.read(handle -> LedgerSql.sequencesAfter(handle, from, PAGE))) {
                try {
                    readable.addAll(database.read(handle -> LedgerSql.after(handle, before - 1, 1)));
                } catch (JdbiException | IllegalArgumentException | DateTimeException unreadable) {
                    findings.add(new Finding(
                            Message.of("ledger.check.revision-alone", "sequence", before),
                            Message.of("ledger.check.not-read", "why", Explained.of(unreadable))));
                }
            }
            return readable;
        }
    }
}
