package tenterbook.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jdbi.v3.core.JdbiException;
import tenterbook.archive.Archive;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Checks an archive: the chain, the tables and the file of the ledger, the references, and every original and every stored
 * paper against its SHA-256. A file that no record names is reported as an orphan. The search index is not checked here.
 */
public final class ArchiveCheck {
    private ArchiveCheck() {}

    /**
     * Everything found, empty for a whole archive. Changes nothing.
     *
     * @throws Progress.Cancelled if asked to stop
     */
    public static List<Finding> run(Archive archive, Progress progress) {
        return run(archive, progress, List::of);
    }

    /**
     * The same, and what is derived from the ledger.
     *
     * @param derived checks that; not asked where the ledger lacks a table
     */
    public static List<Finding> run(Archive archive, Progress progress, Supplier<List<Finding>> derived) {
        List<Finding> findings = new ArrayList<>();
        if (ledger(archive, progress, findings)) {
            FileCheck files = FileCheck.of(archive, !findings.isEmpty(), progress);
            findings.addAll(files.damage());
            findings.addAll(files.orphans());
            findings.addAll(derived.get());
        }
        return findings;
    }

    /** What can be found at a start without reading the whole ledger: its schema, whether it is an older or another one, and whether the clock is. */
    public static List<Finding> atStart(Archive archive) {
        List<Finding> findings = new ArrayList<>(archive.ledger().check().schema());
        archive.ledger().behind().ifPresent(findings::add);
        archive.ledger()
                .clock()
                .doubt()
                .ifPresent(doubt -> findings.add(
                        new Finding(Message.of("exchange.clock"), doubt.sentence()).meaning(Consequence.CLOCK)));
        return findings;
    }

    /** Of the ledger alone: its chain, tables, file and references, and whether it is an older one. */
    public static List<Finding> ledger(Archive archive, Progress progress) {
        List<Finding> findings = new ArrayList<>();
        ledger(archive, progress, findings);
        return findings;
    }

    /** @return whether every table is there, so that more can be checked */
    private static boolean ledger(Archive archive, Progress progress, List<Finding> findings) {
        progress.at(0, 0, Message.of("exchange.checking-ledger"));
        progress.orStop();
        findings.addAll(archive.ledger().check().run(progress));
        archive.ledger().behind().ifPresent(findings::add);
        if (!archive.ledger().check().canBeRead()) {
            findings.add(new Finding("ledger.db", Message.of("exchange.table-missing")));
            return false;
        }
        try {
            findings.addAll(new ReferenceCheck(archive.ledger()).run(progress));
        } catch (JdbiException e) {
            findings.add(new Finding("ledger.db", Message.of("exchange.names-not-read", "why", Explained.of(e))));
        }
        return true;
    }
}
