package tenterbook.exchange;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.JdbiException;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.exchange.kept.KeptFiles;
import tenterbook.exchange.kept.KeptFolder;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * The files that the ledger names against those that are there, in one {@link KeptFolder}.
 *
 * @param damage named files that are missing or do not match their name
 * @param orphans files that no record names; harmless, but reported
 * @param doubted whether something is wrong with the ledger
 */
record FileCheck(List<Finding> damage, List<Finding> orphans, boolean doubted) {
    /** Reads every file of every such folder once. */
    static FileCheck of(Archive archive, boolean doubted, Progress progress) {
        FileCheck check = new FileCheck(new ArrayList<>(), new ArrayList<>(), doubted);
        for (KeptFolder folder : KeptFolder.values()) {
            try {
                check.files(folder, KeptFiles.in(folder.in(archive.folder())), folder.named(archive), progress);
            } catch (JdbiException e) {
                check.damage.add(new Finding("ledger.db", folder.message("names-not-read", "why", Explained.of(e))));
            } catch (IOException e) {
                check.damage.add(
                        new Finding(folder.path(""), Message.of("exchange.file.not-listed", "why", e.toString()))
                                .meaning(Consequence.FILES));
            }
        }
        return check;
    }

    private void files(KeptFolder folder, KeptFiles files, Map<String, String> named, Progress progress) {
        Pace pace = new Pace(progress, files.bytes());
        Map<String, String> missing = new TreeMap<>(named);
        files.files().forEach((digest, copies) -> {
            missing.remove(digest.hex());
            boolean known = named.containsKey(digest.hex());
            for (KeptFiles.KeptFile file : copies) {
                pace.begin(folder.message("checking", "file", digest.brief()));
                compare(folder, file, digest.hex(), known ? damage : orphans, pace);
            }
            if (!known) {
                orphans.add(folder.orphan(copies.get(0).path(), named.isEmpty(), doubted));
            }
            copies.stream()
                    .skip(1)
                    .forEach(second -> orphans.add(
                            folder.second(second.path(), copies.get(0).path())));
        });
        missing.forEach((hex, record) -> damage.add(folder.missing(record, hex)));
        files.strange().forEach(strange -> orphans.add(folder.strange(strange)));
    }

    private static void compare(
            KeptFolder folder, KeptFiles.KeptFile file, String expected, List<Finding> into, Pace pace) {
        try {
            String found = Sums.of(file.file(), List.of("sha256"), pace).hex().get("sha256");
            if (!found.equals(expected)) {
                into.add(folder.changed(file.path(), found));
            }
        } catch (IOException e) {
            into.add(new Finding(folder.path(file.path()), Message.of("exchange.file.not-to-end", "why", e.toString()))
                    .meaning(Consequence.FILES));
        }
    }
}
