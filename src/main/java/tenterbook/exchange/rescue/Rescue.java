package tenterbook.exchange.rescue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.exchange.BagRefused;
import tenterbook.exchange.kept.UnfinishedFolder;
import tenterbook.ledger.LedgerRemains;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.LedgerFile;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Erasure;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Explained;
import tenterbook.words.Message;

/**
 * Makes a new archive from whatever is left of one: a ledger's file or its plain text, photographs, papers, a damaged bag.
 * Where a ledger's file is whole it is taken over as it is, with its chain; otherwise every revision that can be read begins a
 * new chain, in its order and with its time. Nothing is ever written where it reads from.
 */
public final class Rescue {
    private final Clock clock;
    private final Path from;
    private final Path place;
    private final RescueList list = new RescueList();

    private Rescue(Clock clock, Path from, Path place) {
        this.clock = clock;
        this.from = from;
        this.place = place;
    }

    /**
     * @param from a folder of an archive, a bag, or a file {@code ledger.jsonl} or {@code ledger.db}
     * @param archive a folder that is missing or empty
     * @return what is whole, missing and doubtful; the same stands in {@code RESCUED.txt} in the new archive
     * @throws BagRefused if nothing of an archive was found, or the place is not fit; nothing is left behind
     * @throws Progress.Cancelled if asked to stop; nothing is left behind
     */
    public static RescueList run(Path from, Path archive, Clock clock, Progress progress) {
        Path place = archive.toAbsolutePath().normalize();
        try {
            return new Rescue(clock, from.toRealPath(), place).run(progress);
        } catch (IOException | ArchiveProblem e) {
            throw new BagRefused(from.toString(), Message.of("rescue.failed", "why", Explained.of(e)));
        }
    }

    private RescueList run(Progress progress) throws IOException {
        refuseUnfit();
        RescueFiles files = RescueFiles.under(from, progress);
        try (UnfinishedFolder unfinished = UnfinishedFolder.beside(place)) {
            List<LedgerRemains> remains = remains(files, unfinished);
            if (remains.stream().allMatch(each -> each.revisions().isEmpty())
                    && files.others().isEmpty()) {
                throw new BagRefused(from.toString(), Message.of("rescue.nothing"));
            }
            Path whole = unfinished.whole();
            Path kept = wholeLedger(files, remains, unfinished);
            if (kept != null) {
                Files.move(kept, whole.resolve("ledger.db"));
            }
            try (Archive archive = Archive.openMade(whole, clock)) {
                if (kept == null) {
                    takeOver(archive, remains);
                } else {
                    list.whole(Message.of(
                            "rescue.chain-whole",
                            "count",
                            archive.ledger().lastSequence(),
                            "hash",
                            archive.ledger().lastHash()));
                }
                files.into(archive, list, progress);
                ArchiveCheck.ledger(archive, progress).forEach(list::doubtful);
            }
            Files.writeString(whole.resolve("RESCUED.txt"), list.text(from));
            Files.deleteIfExists(whole.resolve("in-use.lock"));
            progress.orStop();
            unfinished.moveTo(place);
        }
        return list;
    }

    private void refuseUnfit() throws IOException {
        if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)
                && (!Files.isDirectory(place) || !LedgerFile.in(place).folderUnused())) {
            throw new BagRefused(place.toString(), Message.of("exchange.restore.not-empty"));
        }
        Path parent = place.getParent();
        if (parent == null || !Files.isDirectory(parent)) {
            throw new BagRefused(place.toString(), Message.of("exchange.no-folder"));
        }
        if (parent.toRealPath().startsWith(from)) {
            throw new BagRefused(place.toString(), Message.of("rescue.inside"));
        }
    }

    /** What can be read of each ledger that was found. Files of SQLite are read from a copy. */
    private List<LedgerRemains> remains(RescueFiles files, UnfinishedFolder unfinished) throws IOException {
        List<LedgerRemains> remains = new ArrayList<>();
        for (Path database : files.databases()) {
            try (ArchiveFolder looked = ArchiveFolder.look(database.getParent())) {
                LedgerRemains found = LedgerRemains.ofDatabase(name(database), looked.ledger());
                remains.add(found);
                if (found.revisions().isEmpty()) {
                    list.missing(new Finding(name(database), Message.of("rescue.database-unreadable")));
                }
            }
        }
        for (Path text : files.texts()) {
            remains.add(LedgerRemains.ofText(name(text), text));
        }
        return remains;
    }

    private String name(Path file) {
        return file.equals(from)
                ? file.getFileName().toString()
                : from.relativize(file).toString();
    }

    /** A copy of the ledger's file that is whole and holds as much as any other that was found; null where there is none. */
    private @Nullable Path wholeLedger(RescueFiles files, List<LedgerRemains> remains, UnfinishedFolder unfinished)
            throws IOException {
        long most = remains.stream().mapToLong(LedgerRemains::wholeCount).max().orElse(0);
        for (int i = 0; i < files.databases().size(); i++) {
            if (remains.get(i).revisions().isEmpty()
                    || remains.get(i).revisions().size() < most) {
                continue;
            }
            Path copy = unfinished.aside("ledger-" + i + ".db");
            try (Archive archive = Archive.look(files.databases().get(i).getParent(), clock)) {
                if (archive.ledger().check().run(Progress.UNWATCHED).isEmpty()) {
                    archive.ledger().copyTo(copy);
                    return copy;
                }
            }
        }
        return null;
    }

    private void takeOver(Archive archive, List<LedgerRemains> remains) {
        if (remains.stream().allMatch(each -> each.revisions().isEmpty())) {
            list.missing(new Finding("ledger.db", Message.of("rescue.no-ledger")));
            return;
        }
        LedgerRemains base = remains.stream()
                .max(Comparator.comparingLong(LedgerRemains::wholeCount))
                .orElseThrow();
        NavigableMap<Long, Revision> chain = new TreeMap<>(base.revisions());
        long highest = remains.stream().mapToLong(LedgerRemains::highest).max().orElse(0);
        for (long sequence = 1; sequence <= highest; sequence++) {
            Revision there = chain.get(sequence);
            if (there == null || !LedgerRemains.whole(there)) {
                for (LedgerRemains other : remains) {
                    Revision better = other.fitting(sequence, chain);
                    if (better != null) {
                        chain.put(sequence, better);
                        break;
                    }
                }
            }
        }
        archive.ledger().takeOver(judged(chain, highest));
        list.whole(Message.of("rescue.new-chain", "count", archive.ledger().lastSequence(), "origin", base.origin()));
    }

    /** The revisions to take over; the list says of every other why not. */
    private List<Revision> judged(NavigableMap<Long, Revision> chain, long highest) {
        List<Revision> taken = new ArrayList<>();
        for (long sequence = 1; sequence <= highest; sequence++) {
            Revision revision = chain.get(sequence);
            Message where = Message.of("ledger.check.revision-alone", "sequence", sequence);
            if (revision == null) {
                list.missing(new Finding(where, Message.of("rescue.revision-missing")));
            } else if (revision.key().kind().equals(Erasure.KIND.name())) {
                list.missing(new Finding(where, Message.of("rescue.erasure")));
            } else if (!readable(revision)) {
                list.missing(new Finding(
                        where, Message.of("rescue.unreadable", "record", revision.key(), "text", revision.json())));
            } else {
                taken.add(revision);
                if (!LedgerRemains.whole(revision)) {
                    list.doubtful(new Finding(where, Message.of("rescue.changed", "record", revision.key())));
                }
            }
        }
        return taken;
    }

    /** A record of a kind that this program does not know is taken over as it is. */
    private static boolean readable(Revision revision) {
        return Kinds.ALL.stream()
                .filter(kind -> kind.name().equals(revision.key().kind()))
                .allMatch(kind -> reads(kind, revision));
    }

    private static <T> boolean reads(Kind<T> kind, Revision revision) {
        try {
            T record = kind.codec().fromText(revision.json());
            return kind.id().apply(record).equals(revision.key().id());
        } catch (RuntimeException e) {
            return false;
        }
    }
}
