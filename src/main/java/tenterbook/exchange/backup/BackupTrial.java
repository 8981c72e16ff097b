package tenterbook.exchange.backup;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.Checked;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.Sums;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.file.TemporaryFolder;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Message;

/** Compares the ledger of a backup, opened from a copy, with the archive it was made of. */
final class BackupTrial {
    private static final int PAGE = 500;

    private BackupTrial() {}

    static List<Finding> compare(Checked checked, Archive archive, Clock clock, Progress progress) throws IOException {
        List<Finding> findings = new ArrayList<>();
        try (TemporaryFolder folder = new TemporaryFolder("tenterbook-trial")) {
            Path ledger = folder.path().resolve("ledger.db");
            Sums.copy(checked.payload().get("data/ledger.db"), ledger, new Pace(progress, 0));
            try (Archive restored = Archive.openMade(folder.path(), clock)) {
                revisions(restored, archive, findings, progress);
            }
        }
        return findings;
    }

    /** An erasure since the backup takes texts out of the archive and not out of the backup, which is no difference of it. */
    private static void revisions(Archive restored, Archive archive, List<Finding> findings, Progress progress) {
        long end = restored.ledger().lastSequence();
        long sequence = 0;
        while (sequence < end) {
            List<Revision> theirs = restored.ledger().after(sequence, PAGE);
            List<Revision> ours = archive.ledger().after(sequence, theirs.size());
            for (int i = 0; i < theirs.size(); i++) {
                Revision their = theirs.get(i);
                Revision our = i < ours.size() ? ours.get(i) : null;
                boolean same = our != null
                        && our.sequence() == their.sequence()
                        && our.hash().equals(their.hash())
                        && (our.redacted() || our.json().equals(their.json()));
                if (!same) {
                    findings.add(new Finding(
                            Message.of("ledger.check.revision", "sequence", their.sequence(), "record", their.key()),
                            Message.of("backup.differs")));
                }
                sequence = their.sequence();
            }
            progress.at(sequence, end, Message.of("backup.comparing"));
            progress.orStop();
        }
    }
}
