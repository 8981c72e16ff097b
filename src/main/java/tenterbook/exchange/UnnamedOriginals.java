package tenterbook.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tenterbook.archive.Archive;
import tenterbook.archive.arrival.ArrivalReport;
import tenterbook.archive.arrival.Arrivals;
import tenterbook.exchange.kept.KeptFiles;
import tenterbook.exchange.kept.KeptFolder;
import tenterbook.imaging.IntakePool.Incoming;
import tenterbook.imaging.PhotoIntake;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;

/**
 * Originals that no record names, as a program leaves them that is killed between receiving a photograph and saving it.
 *
 * @param files whose name is a digest that no record ever had; each is read against its name when it joins
 */
public record UnnamedOriginals(List<Path> files) {
    public UnnamedOriginals {
        files = List.copyOf(files);
    }

    /**
     * Those that were there before a moment by the clock of the disk. None where the ledger is older than the last one written
     * here, or may be: the right one may name them.
     */
    public static UnnamedOriginals before(Instant moment, Archive archive) throws IOException {
        Set<String> named = KeptFolder.PHOTOS.named(archive).keySet();
        if (archive.ledger().behind().isPresent()
                || named.isEmpty() && !archive.ledger().extentKnown()) {
            return new UnnamedOriginals(List.of());
        }
        List<Path> unnamed = new ArrayList<>();
        for (Map.Entry<Digest, List<KeptFiles.KeptFile>> each :
                KeptFiles.in(archive.folder().photos()).files().entrySet()) {
            Path file = each.getValue().get(0).file();
            if (!named.contains(each.getKey().hex())
                    && Files.getLastModifiedTime(file).toInstant().isBefore(moment)) {
                unnamed.add(file);
            }
        }
        return new UnnamedOriginals(unnamed);
    }

    /** Gives each a record, so that it waits for its piece. One that is no whole photograph stays as it is and is reported. */
    public ArrivalReport join(Archive archive, PhotoIntake intake, Progress progress) {
        return new Arrivals(archive, intake, archive.author())
                .take(files.stream().map(Incoming::file).toList(), progress);
    }
}
