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
import tenterbook.exchange.kept.UnfinishedFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Packs an archive into a bag (RFC 8493) that opens with no software of ours.
 *
 * <p>The archive may be in use meanwhile; the bag holds one moment of it. Photographs are copied and not linked, so that a file
 * edited inside the bag does not change the original. The bag is read back before it gets its name, and appears whole or not at
 * all.
 */
public final class Pack {
    private final Clock clock;

    public Pack(Clock clock) {
        this.clock = clock;
    }

    /** As {@link #pack(Archive, Path, DamageAdvice, Progress)}, refusing damage. */
    public Bag pack(Archive archive, Path target, Progress progress) {
        return pack(archive, target, DamageAdvice.REFUSED, progress);
    }

    /**
     * Makes the bag.
     *
     * @param target a folder that is not there yet, in one that is
     * @param damage whether an archive that is not whole is packed nonetheless; what is wrong then stands in {@code
     *     bag-info.txt}
     * @throws PackRefused with all reasons; nothing is left behind
     * @throws Progress.Cancelled if asked to stop; nothing is left behind
     */
    public Bag pack(Archive archive, Path target, DamageAdvice damage, Progress progress) {
        Path place = target.toAbsolutePath().normalize();
        refuseUnfit(archive, place);
        try (UnfinishedFolder unfinished = UnfinishedFolder.beside(place)) {
            List<Finding> findings = ArchiveCheck.ledger(archive, progress);
            Bag bag = new BagFilling(
                            archive,
                            unfinished.whole(),
                            place,
                            LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC),
                            progress,
                            findings)
                    .fill(damage, unfinished.cleared());
            readBack(unfinished, bag, progress);
            progress.at(bag.bytes(), bag.bytes(), Message.of("exchange.pack.naming"));
            progress.orStop();
            unfinished.moveTo(place);
            progress.at(bag.bytes(), bag.bytes(), Message.of("exchange.pack.packed"));
            return bag;
        } catch (IOException e) {
            throw new PackRefused(place.toString(), Message.of("exchange.pack.not-written", "why", e.toString()));
        } catch (ArchiveProblem e) {
            throw new PackRefused(place.toString(), Message.of("exchange.pack.not-made", "why", Explained.of(e)));
        } catch (JdbiException e) {
            throw new PackRefused("ledger.db", Message.of("exchange.pack.ledger-not-read", "why", Explained.of(e)));
        }
    }

    /** Noted damage is in the copied ledger and is no error of the copy. */
    private void readBack(UnfinishedFolder unfinished, Bag bag, Progress progress) throws IOException {
        List<Finding> findings = new ArrayList<>(
                BagVerification.run(unfinished.whole(), unfinished.aside("read-back"), clock, progress));
        findings.removeAll(bag.damage());
        if (!findings.isEmpty()) {
            throw new PackRefused(findings, Message.of("exchange.pack.not-restorable"));
        }
    }

    private static void refuseUnfit(Archive archive, Path place) {
        if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            throw new PackRefused(place.toString(), Message.of("exchange.pack.already-there"));
        }
        if (place.getParent() == null || !Files.isDirectory(place.getParent())) {
            throw new PackRefused(place.toString(), Message.of("exchange.no-folder"));
        }
        if (place.startsWith(archive.folder().root().toAbsolutePath().normalize())) {
            throw new PackRefused(place.toString(), Message.of("exchange.pack.inside-archive"));
        }
    }
}
