package tenterbook.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.exchange.bag.Checked;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.SecondOpinion;
import tenterbook.exchange.bag.Sums;
import tenterbook.exchange.kept.BackupFolder;
import tenterbook.exchange.kept.KeptFiles;
import tenterbook.exchange.kept.UnfinishedFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.ledger.file.Progress;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Brings an archive back from a bag.
 *
 * <p>First the bag is checked to its last byte, then copied beside the place it will have, then the copy is checked as an
 * archive: chain, references, photographs, papers. Only then does it get its name, in one step.
 */
public final class Restore {
    private final Clock clock;

    public Restore(Clock clock) {
        this.clock = clock;
    }

    /** As {@link #restore(Path, Path, DamageAdvice, Progress)}, refusing damage. */
    public Restored restore(Path bag, Path archiveDir, Progress progress) {
        return restore(bag, archiveDir, DamageAdvice.REFUSED, progress);
    }

    /**
     * Restores into a folder that is missing or empty, or holds only what a killed first start left.
     *
     * @param damage whether missing or changed photographs and papers are let pass; a damaged bag or ledger never is
     * @throws BagRefused with everything found wrong; nothing is left behind
     * @throws Progress.Cancelled if asked to stop; nothing is left behind
     */
    public Restored restore(Path bag, Path archiveDir, DamageAdvice damage, Progress progress) {
        Path place = archiveDir.toAbsolutePath().normalize();
        try {
            mustFit(bag, place);
            Path chosen = BackupFolder.bagIn(bag);
            Checked checked = BagCheck.run(chosen, progress);
            List<Finding> findings = new ArrayList<>(checked.findings());
            NavigableMap<String, Path> ours = BagLedger.parts(checked, findings);
            BackupFolder.addShared(checked, chosen, ours);
            room(place, ours, findings);
            if (findings.isEmpty()) {
                progress.orStop();
                SecondOpinion.ask(chosen.toRealPath()).ifPresent(findings::add);
            }
            if (!findings.isEmpty()) {
                throw new BagRefused(findings);
            }
            return copyAndCheck(checked, ours, place, damage, progress);
        } catch (IOException e) {
            throw new BagRefused(bag.toString(), Message.of("exchange.restore.failed", "why", e.toString()));
        } catch (ArchiveProblem e) {
            throw new BagRefused(place.toString(), e.explanation());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new BagRefused(bag.toString(), Message.of("exchange.restore.interrupted"));
        }
    }

    /**
     * Whether an archive may be restored to that place, before anything is read.
     *
     * @throws BagRefused where not
     */
    public static void mustFit(Path from, Path archiveDir) throws IOException {
        Path bag = from.toAbsolutePath().normalize();
        Path place = archiveDir.toAbsolutePath().normalize();
        if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            if (!Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
                throw new BagRefused(place.toString(), Message.of("exchange.restore.no-folder"));
            }
            if (!LedgerFile.in(place).folderUnused()) {
                throw new BagRefused(place.toString(), Message.of("exchange.restore.not-empty"));
            }
        }
        if (place.getParent() == null || !Files.isDirectory(place.getParent())) {
            throw new BagRefused(place.toString(), Message.of("exchange.no-folder"));
        }
        if (place.startsWith(bag)) {
            throw new BagRefused(place.toString(), Message.of("exchange.restore.inside-bag"));
        }
    }

    private static void room(Path place, Map<String, Path> parts, List<Finding> findings) throws IOException {
        long needed = 0;
        for (Path file : parts.values()) {
            needed += Files.size(file);
        }
        long free = Files.getFileStore(place.getParent()).getUsableSpace();
        if (needed > free) {
            findings.add(new Finding(
                    place.toString(), Message.of("exchange.restore.no-room", "needed", needed, "free", free)));
        }
    }

    private Restored copyAndCheck(
            Checked checked, NavigableMap<String, Path> parts, Path place, DamageAdvice damage, Progress progress)
            throws IOException {
        try (UnfinishedFolder unfinished = UnfinishedFolder.beside(place)) {
            Pace pace = new Pace(progress, checked.bytes());
            for (Map.Entry<String, Path> part : parts.entrySet()) {
                pace.begin(Message.of("exchange.restore.copying", "file", part.getKey()));
                Path to = unfinished.whole().resolve(part.getKey());
                Files.createDirectories(to.getParent());
                Sums.copy(part.getValue(), to, pace);
            }
            Restored restored = asArchive(checked, unfinished, place, damage, progress);
            Files.deleteIfExists(unfinished.whole().resolve("in-use.lock"));
            progress.at(checked.bytes(), checked.bytes(), Message.of("exchange.restore.naming"));
            progress.orStop();
            unfinished.moveTo(place);
            progress.at(checked.bytes(), checked.bytes(), Message.of("exchange.restore.restored"));
            return restored;
        }
    }

    private Restored asArchive(
            Checked checked, UnfinishedFolder unfinished, Path place, DamageAdvice damage, Progress progress)
            throws IOException {
        List<Finding> findings = new ArrayList<>();
        List<Finding> notes = new ArrayList<>(unfinished.cleared());
        List<Finding> allowed = new ArrayList<>();
        try (Archive archive = Archive.openMade(unfinished.whole(), clock)) {
            findings.addAll(BagLedger.check(checked, archive, progress));
            FileCheck files = FileCheck.of(archive, false, progress);
            (damage == DamageAdvice.NOTED ? allowed : findings).addAll(files.damage());
            notes.addAll(BagLedger.lacks(checked, archive));
            notes.addAll(files.orphans());
            if (findings.isEmpty()) {
                checked.info().getOrDefault("tenterbook-left-out", List.of()).stream()
                        .map(file -> new Finding(file, Message.of("exchange.restore.left-out")))
                        .forEach(notes::add);
                return new Restored(
                        place,
                        archive.ledger().lastSequence(),
                        archive.ledger().lastHash(),
                        KeptFiles.in(archive.folder().photos()).files().size(),
                        allowed,
                        notes);
            }
        } catch (Progress.Cancelled e) {
            throw e;
        } catch (RuntimeException e) {
            findings.add(new Finding("data/ledger.db", Message.of("exchange.no-ledger", "why", Explained.of(e))));
        }
        throw new BagRefused(findings);
    }
}
