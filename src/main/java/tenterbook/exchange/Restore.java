package tenterbook.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.exchange.bag.Checked;
import tenterbook.exchange.bag.Pace;
import tenterbook.exchange.bag.SecondOpinion;
import tenterbook.exchange.bag.Sums;
import tenterbook.ledger.ArchiveProblem;
import tenterbook.ledger.Finding;
import tenterbook.ledger.Progress;

/**
 * Brings an archive back from a bag.
 *
 * <p>First the bag is checked to its last byte, then copied beside the place it will have, then the copy is checked as an
 * archive: chain, references, photographs, papers. Only then does it get its name, in one step.
 */
public final class Restore {
    private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);
    private final Clock clock;

    public Restore(Clock clock) {
        this.clock = clock;
    }

    /** As {@link #restore(Path, Path, Damage, Progress)}, refusing damage. */
    public Restored restore(Path bag, Path archiveDir, Progress progress) {
        return restore(bag, archiveDir, Damage.REFUSED, progress);
    }

    /**
     * Restores into a folder that is missing or empty.
     *
     * @param damage whether missing or changed photographs and papers are let pass; a damaged bag or ledger never is
     * @throws BagRefused with everything found wrong; nothing is left behind
     * @throws Progress.Cancelled if asked to stop; nothing is left behind
     */
    public Restored restore(Path bag, Path archiveDir, Damage damage, Progress progress) {
        Path place = archiveDir.toAbsolutePath().normalize();
        try {
            refuseUnfit(bag.toAbsolutePath().normalize(), place);
            Checked checked = BagCheck.run(bag, progress);
            List<Finding> findings = new ArrayList<>(checked.findings());
            NavigableMap<String, Path> ours = parts(checked, findings);
            room(place, ours, findings);
            if (findings.isEmpty()) {
                progress.orStop();
                SecondOpinion.ask(bag.toRealPath()).ifPresent(findings::add);
            }
            if (!findings.isEmpty()) {
                throw new BagRefused(findings);
            }
            return copyAndCheck(checked, ours, place, damage, progress);
        } catch (IOException e) {
            throw new BagRefused(
                    bag.toString(), "reading it or writing the archive failed: %s. Check both disks.".formatted(e));
        } catch (ArchiveProblem e) {
            throw new BagRefused(place.toString(), e.getMessage());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new BagRefused(bag.toString(), "checking it was interrupted. Try again.");
        }
    }

    private static void refuseUnfit(Path bag, Path place) throws IOException {
        if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            if (!Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
                throw new BagRefused(place.toString(), "is there and is no folder; expected none or an empty one.");
            }
            try (Stream<Path> inside = Files.list(place)) {
                if (inside.findAny().isPresent()) {
                    throw new BagRefused(
                            place.toString(),
                            "is not empty; an archive is restored into a folder that is missing or empty. Choose another.");
                }
            }
        }
        if (place.getParent() == null || !Files.isDirectory(place.getParent())) {
            throw new BagRefused(place.toString(), "would lie in a folder that is not there. Make that folder first.");
        }
        if (place.startsWith(bag)) {
            throw new BagRefused(place.toString(), "lies inside the bag; expected a place outside it.");
        }
    }

    /** The payload that makes an archive, by where it goes. */
    private static NavigableMap<String, Path> parts(Checked checked, List<Finding> findings) {
        NavigableMap<String, Path> parts = new TreeMap<>();
        checked.payload().forEach((name, file) -> {
            String inside = name.substring("data/".length());
            if (inside.equals("ledger.db") || KeptFolder.holds(inside)) {
                parts.put(inside, file);
            } else if (inside.startsWith("ledger.db-")) {
                findings.add(
                        new Finding(
                                name,
                                "lies beside the ledger: it was copied while in use and may lack its newest records. Pack the archive again instead of copying it."));
            }
        });
        if (!parts.containsKey("ledger.db")) {
            findings.add(new Finding(
                    "data/ledger.db", "is missing; without it this may be a bag, but it is no archive of ours."));
        } else if (!isSqlite(parts.get("ledger.db"))) {
            findings.add(new Finding("data/ledger.db", "is no SQLite file, which a ledger is."));
        }
        checked.info(Contents.LABEL)
                .filter(word -> Arrays.stream(Contents.values())
                        .noneMatch(contents -> contents.word().equals(word)))
                .ifPresent(word -> findings.add(new Finding(
                        "bag-info.txt",
                        "says that the bag holds “%s”; expected “everything”. Only a full backup can become an archive again."
                                .formatted(word))));
        return parts;
    }

    private static boolean isSqlite(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return Arrays.equals(in.readNBytes(SQLITE.length), SQLITE);
        } catch (IOException e) {
            return false;
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
                    place.toString(),
                    "needs %,d bytes, but its disk has %,d left. Make room or choose another disk."
                            .formatted(needed, free)));
        }
    }

    private Restored copyAndCheck(
            Checked checked, NavigableMap<String, Path> parts, Path place, Damage damage, Progress progress)
            throws IOException {
        try (Unfinished unfinished = Unfinished.beside(place)) {
            Pace pace = new Pace(progress, checked.bytes());
            for (Map.Entry<String, Path> part : parts.entrySet()) {
                pace.begin("copying " + part.getKey());
                Path to = unfinished.whole().resolve(part.getKey());
                Files.createDirectories(to.getParent());
                Sums.copy(part.getValue(), to, pace);
            }
            Restored restored = asArchive(checked, unfinished.whole(), place, damage, progress);
            List<Finding> built =
                    SchemaCheck.run(unfinished.whole().resolve("ledger.db"), unfinished.aside("blank"), clock);
            if (!built.isEmpty()) {
                throw new BagRefused(built);
            }
            Files.deleteIfExists(unfinished.whole().resolve("in-use.lock"));
            progress.at(checked.bytes(), checked.bytes(), "giving the archive its name");
            progress.orStop();
            unfinished.moveTo(place);
            progress.at(checked.bytes(), checked.bytes(), "restored");
            return restored;
        } catch (SQLException e) {
            throw new BagRefused("data/ledger.db", "how it is built cannot be read: %s.".formatted(e.getMessage()));
        }
    }

    private Restored asArchive(Checked checked, Path copy, Path place, Damage damage, Progress progress)
            throws IOException {
        List<Finding> findings = new ArrayList<>();
        List<Finding> notes = new ArrayList<>();
        List<Finding> allowed = new ArrayList<>();
        try (Archive archive = Archive.open(copy, clock)) {
            findings.addAll(ArchiveCheck.ledger(archive, progress));
            sameAsText(checked, archive, findings, progress);
            FileCheck files = FileCheck.of(archive, progress);
            (damage == Damage.NOTED ? allowed : findings).addAll(files.damage());
            notes.addAll(files.orphans());
            if (findings.isEmpty()) {
                checked.info().getOrDefault("tenterbook-left-out", List.of()).stream()
                        .map(file -> new Finding(file, "was left out when the bag was packed."))
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
            findings.add(new Finding("data/ledger.db", "cannot be opened as a ledger: %s.".formatted(e.getMessage())));
        }
        throw new BagRefused(findings);
    }

    /** The ledger must be the one that the bag tells of, in its text and in its description, where it has those. */
    private static void sameAsText(Checked checked, Archive archive, List<Finding> findings, Progress progress)
            throws IOException {
        String last = archive.ledger().lastHash().hex();
        checked.info("Tenterbook-Last-Hash")
                .filter(stated -> !stated.equals(last))
                .ifPresent(stated -> findings.add(new Finding(
                        "data/ledger.db",
                        "ends with the hash %s, but bag-info.txt says %s: one of them was changed. Use another bag."
                                .formatted(last, stated))));
        Path text = checked.payload().get("data/ledger.jsonl");
        if (text != null) {
            long parts = LedgerText.partsFrom(text, archive.ledger(), progress);
            if (parts > 0) {
                findings.add(new Finding(
                        "data/ledger.jsonl",
                        "says something else than data/ledger.db from revision %d on: one of them was changed. Use another bag."
                                .formatted(parts)));
            }
        }
    }
}
