package tenterbook.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import org.jdbi.v3.core.JdbiException;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.exchange.bag.Checked;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.SecondOpinion;
import tenterbook.exchange.bag.Sums;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.exchange.kept.KeptFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.file.TemporaryFolder;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Reads a bag that was just written, as restoring it would: every file against its checksums, and its ledger opened from a
 * copy. A photograph's checksum is its name, and the writer has compared the two, so photographs are not read a second time for
 * that. What the system still has in memory is not read from the disk anew.
 */
public final class BagVerification {
    private BagVerification() {}

    /**
     * Whether a bag that somebody kept can be restored: as {@link #run}, and every photograph and paper that the ledger names
     * against its name. Changes nothing in the bag.
     *
     * @throws Progress.Cancelled if asked to stop
     */
    public static List<Finding> kept(Path bag, Clock clock, Progress progress) throws IOException {
        try (TemporaryFolder folder = new TemporaryFolder("tenterbook-check")) {
            return run(bag, null, folder.path().resolve("read-back"), clock, true, progress);
        }
    }

    /** @param aside a folder that is not there yet, for the copy of the ledger; the caller clears it */
    static List<Finding> run(Path bag, Path aside, Clock clock, Progress progress) throws IOException {
        return run(bag, null, aside, clock, false, progress);
    }

    /**
     * The same for a bag that is not in its place in a backup.
     *
     * @param shared the photographs and papers of that backup by their names in an archive; they are not read
     */
    public static List<Finding> inBackup(
            Path bag, NavigableMap<String, Path> shared, Path aside, Clock clock, Progress progress)
            throws IOException {
        return run(bag, shared, aside, clock, false, progress);
    }

    private static List<Finding> run(
            Path bag,
            @Nullable NavigableMap<String, Path> shared,
            Path aside,
            Clock clock,
            boolean names,
            Progress progress)
            throws IOException {
        Checked checked = BagCheck.run(bag, progress);
        List<Finding> findings = new ArrayList<>(checked.findings());
        NavigableMap<String, Path> parts = BagLedger.parts(checked, findings);
        if (shared == null) {
            BackupFolder.addShared(checked, bag, parts);
        } else {
            parts.putAll(shared);
        }
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
        try (Archive archive = Archive.openMade(aside, clock)) {
            findings.addAll(BagLedger.check(checked, archive, progress));
            findings.addAll(missing(archive, parts.keySet()));
            if (names) {
                changed(archive, parts, findings, progress);
            }
        } catch (ArchiveProblem | JdbiException e) {
            findings.add(new Finding("data/ledger.db", Message.of("exchange.no-ledger", "why", Explained.of(e))));
        }
        return findings;
    }

    /** A bag can be put together again around a changed file, so that its checksums agree and only the file's name does not. */
    private static void changed(
            Archive archive, NavigableMap<String, Path> parts, List<Finding> findings, Progress progress)
            throws IOException {
        for (KeptFolder folder : KeptFolder.values()) {
            Set<String> named = folder.named(archive).keySet();
            for (Map.Entry<String, Path> part : parts.entrySet()) {
                String hex = digest(part.getKey());
                if (part.getKey().startsWith(folder.path("")) && named.contains(hex)) {
                    String found = Sums.of(part.getValue(), List.of("sha256"), new Pace(progress, 0))
                            .hex()
                            .get("sha256");
                    if (!hex.equals(found)) {
                        findings.add(folder.changed(
                                part.getKey().substring(folder.path("").length()), found));
                    }
                }
            }
        }
    }

    private static String digest(String part) {
        return part.replaceFirst("^\\w+/../([0-9a-f]{64}).*$", "$1");
    }

    private static List<Finding> missing(Archive archive, Set<String> parts) {
        Set<String> there = new HashSet<>();
        parts.forEach(part -> there.add(digest(part)));
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
