package tenterbook.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.NavigableMap;
import java.util.Set;
import org.jdbi.v3.core.JdbiException;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.exchange.bag.Checked;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.SecondOpinion;
import tenterbook.exchange.bag.Sums;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Reads a bag that was just written, as restoring it would: every file against its checksums, and its ledger opened from a
 * copy. A photograph's checksum is its name, and the writer has compared the two, so photographs are not read a second time for
 * that. What the system still has in memory is not read from the disk anew.
 */
final class BagVerification {
    private BagVerification() {}

    /** @param aside a folder that is not there yet, for the copy of the ledger; the caller clears it */
    static List<Finding> run(Path bag, Path aside, Clock clock, Progress progress) throws IOException {
        Checked checked = BagCheck.run(bag, progress);
        List<Finding> findings = new ArrayList<>(checked.findings());
        NavigableMap<String, Path> parts = BagLedger.parts(checked, findings);
        try {
            SecondOpinion.ask(bag).ifPresent(findings::add);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            findings.add(new Finding(Message.of("bag.the-bag"), Message.of("exchange.pack.interrupted")));
        }
        if (!findings.isEmpty()) {
            return findings;
        }
        Path copy = Files.createDirectory(aside).resolve("ledger.db");
        Sums.copy(parts.get("ledger.db"), copy, new Pace(progress, Files.size(parts.get("ledger.db"))));
        try (Archive archive = Archive.open(aside, clock)) {
            findings.addAll(BagLedger.check(checked, archive, progress));
            findings.addAll(missing(archive, parts.keySet()));
        } catch (ArchiveProblem | JdbiException e) {
            findings.add(new Finding("data/ledger.db", Message.of("exchange.no-ledger", "why", Explained.of(e))));
        }
        return findings;
    }

    private static List<Finding> missing(Archive archive, Set<String> parts) {
        Set<String> there = new HashSet<>();
        parts.forEach(part -> there.add(part.replaceFirst("^\\w+/../([0-9a-f]{64}).*$", "$1")));
        List<Finding> missing = new ArrayList<>();
        for (KeptFolder folder : KeptFolder.values()) {
            folder.named(archive).forEach((hex, record) -> {
                if (!there.contains(hex)) {
                    missing.add(folder.missing(record, hex));
                }
            });
        }
        return missing;
    }
}
