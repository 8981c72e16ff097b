package tenterbook.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.JdbiException;
import tenterbook.archive.Archive;
import tenterbook.ledger.ArchiveProblem;
import tenterbook.ledger.Finding;
import tenterbook.ledger.Progress;

/**
 * Packs an archive into a bag (RFC 8493) that opens with no software of ours.
 *
 * <p>The archive may be in use meanwhile; the bag holds one moment of it. Photographs are copied and not linked: a file
 * edited inside the bag must not change the original. The bag is read back before it gets its name, and appears under it
 * whole or not at all.
 */
public final class Pack {
    private final Clock clock;

    public Pack(Clock clock) {
        this.clock = clock;
    }

    /** As {@link #pack(Archive, Path, Damage, Progress)}, refusing damage. */
    public Bag pack(Archive archive, Path target, Progress progress) {
        return pack(archive, target, Damage.REFUSED, progress);
    }

    /**
     * Makes the bag.
     *
     * @param target a folder that is not there yet, in one that is
     * @param damage whether an archive that is not whole is packed nonetheless; what is wrong then stands in
     *     {@code bag-info.txt}
     * @throws PackRefused with everything that stands in the way; nothing is left behind
     * @throws Progress.Cancelled if asked to stop; nothing is left behind
     */
    public Bag pack(Archive archive, Path target, Damage damage, Progress progress) {
        Path place = target.toAbsolutePath().normalize();
        refuseUnfit(archive, place);
        try (Unfinished unfinished = Unfinished.beside(place)) {
            List<Finding> findings = ArchiveCheck.ledger(archive, progress);
            Bag bag = new Filling(
                            archive,
                            unfinished.whole(),
                            place,
                            LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC),
                            progress,
                            findings)
                    .fill(damage);
            readBack(unfinished, bag, progress);
            progress.at(bag.bytes(), bag.bytes(), "giving the bag its name");
            progress.orStop();
            unfinished.moveTo(place);
            progress.at(bag.bytes(), bag.bytes(), "packed");
            return bag;
        } catch (IOException e) {
            throw new PackRefused(
                    place.toString(),
                    "the bag could not be written: %s. Check that the disk has room and that the folder is yours."
                            .formatted(e));
        } catch (ArchiveProblem e) {
            throw new PackRefused(place.toString(), "the bag could not be made. " + e.getMessage());
        } catch (JdbiException e) {
            throw new PackRefused(
                    "ledger.db",
                    "cannot be read to its end, so it cannot be packed: %s. Keep the folder as it is and restore the newest bag into another."
                            .formatted(e.getMessage()));
        }
    }

    /** Damage that was noted stands in the ledger that was copied, and is no fault of the copy. */
    private void readBack(Unfinished unfinished, Bag bag, Progress progress) throws IOException {
        List<Finding> findings =
                new ArrayList<>(ReadBack.run(unfinished.whole(), unfinished.aside("read-back"), clock, progress));
        findings.removeAll(bag.damage());
        if (!findings.isEmpty()) {
            throw new PackRefused(
                    findings,
                    "The bag was written, but read back it is not one that could be restored, so it was thrown away. Check the disk that it was to go to, and pack onto another.");
        }
    }

    private static void refuseUnfit(Archive archive, Path place) {
        if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            throw new PackRefused(
                    place.toString(),
                    "is already there; expected a name that is free. Choose another, or move it away.");
        }
        if (place.getParent() == null || !Files.isDirectory(place.getParent())) {
            throw new PackRefused(place.toString(), "would lie in a folder that is not there. Make that folder first.");
        }
        if (place.startsWith(archive.folder().root().toAbsolutePath().normalize())) {
            throw new PackRefused(
                    place.toString(),
                    "lies inside the archive itself; expected a place outside it. Another disk is best.");
        }
    }
}
