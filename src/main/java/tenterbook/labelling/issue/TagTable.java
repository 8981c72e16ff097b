package tenterbook.labelling.issue;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tenterbook.archive.Archive;
import tenterbook.archive.Dependents;
import tenterbook.archive.Kinds;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.issue.HangTagStatus.Standing;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.file.Consequence;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.ledger.revision.RecordKey;
import tenterbook.ledger.revision.Revision;
import tenterbook.words.Message;

/**
 * The status of every piece's hang tag in every market, as a table derived from the ledger. It follows the ledger whenever it
 * is asked and can be deleted at any time; a table that is missing, damaged, of another ledger or of other rules is rebuilt.
 * Thread-safe.
 */
public final class TagTable implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(TagTable.class);
    private static final String LOOKING = Message.of("label.standing.looking").inEnglish();
    private static final int BATCH = 1000;
    private static final int TOGETHER = 50;
    /** From this many pieces on, every paper is read once, which is faster than piece by piece. */
    private static final int MANY = 500;
    /** Computing this many takes noticeable time. */
    private static final int LONG = 2000;
    /** This many revisions behind, rebuilding is faster than following. */
    private static final int FAR = 20_000;

    private final Archive archive;
    private final TagRows rows;
    /** Lock of {@link #bringUp}. */
    private final Object bringing = new Object();

    private TagTable(Archive archive, TagRows rows) {
        this.archive = archive;
        this.rows = rows;
    }

    /** Opens the table of an archive; missing rows are computed when asked for. */
    public static TagTable open(Archive archive) {
        TagRows rows = new TagRows(archive.folder().derived().resolve("tags.db"), version());
        TagTable table = new TagTable(archive, rows);
        if (rows.sequence() > 0 && !table.ofThisLedger()) {
            LOG.warn("The table of tags belongs to another ledger, as after restoring an older one; it is made anew");
            rows.startAnew();
        }
        return table;
    }

    /**
     * The version of everything besides records that the rows depend on: the form of the table, the words of the tag, the
     * rules.
     */
    public static String version() {
        return Stream.concat(
                        Stream.of("1", LabelKind.HANG_TAG.template()),
                        Stream.of(Market.values()).map(Market::rulesVersion))
                .collect(Collectors.joining(", "));
    }

    private boolean ofThisLedger() {
        List<Revision> last = archive.ledger().after(rows.sequence() - 1, 1);
        return !last.isEmpty() && last.get(0).hash().hex().equals(rows.hash());
    }

    /** Whether {@link #bringUp} would take more than a moment. */
    public boolean takesLong() {
        long last = archive.ledger().lastSequence();
        long seen = rows.sequence();
        boolean all = seen == 0
                || last - seen >= FAR
                || archive.ledger().after(seen, BATCH).stream().anyMatch(change -> is(change.key(), Kinds.STUDIO));
        return last > seen && all && archive.ledger().count(Kinds.PIECE) >= LONG;
    }

    /**
     * Brings the table up to the end of the ledger.
     *
     * @throws Progress.Cancelled if asked to stop; what is missing is computed the next time
     * @throws ArchiveProblem if the table cannot be written
     */
    public void bringUp(Progress progress) {
        synchronized (bringing) {
            try {
                follow(progress);
            } catch (JdbiException e) {
                LOG.warn("The table of tags could not be used; it is made anew", e);
                try {
                    rebuild(progress);
                } catch (JdbiException again) {
                    throw new ArchiveProblem(
                            Message.of("label.standing.not-written", "why", String.valueOf(again.getMessage()))
                                    .inEnglish(),
                            again);
                }
            }
        }
    }

    private void follow(Progress progress) {
        long last = archive.ledger().lastSequence();
        if (rows.sequence() == 0 && last > 0
                || last - rows.sequence() >= FAR
                || archive.ledger().erasedAfter(rows.sequence())) {
            rebuild(progress);
        }
        List<Revision> batch = archive.ledger().after(rows.sequence(), BATCH);
        while (!batch.isEmpty()) {
            find(List.copyOf(touched(batch)), progress);
            seen(batch.get(batch.size() - 1));
            batch = archive.ledger().after(rows.sequence(), BATCH);
        }
    }

    private void seen(Revision last) {
        rows.seen(last.sequence(), last.hash().hex());
    }

    /** Rebuilds the table from the ledger. */
    public void rebuild(Progress progress) {
        synchronized (bringing) {
            rows.startAnew();
            long last = archive.ledger().lastSequence();
            find(archive.ledger().allIdsEverUsed(Kinds.PIECE), progress);
            if (last > 0) {
                seen(archive.ledger().after(last - 1, 1).get(0));
            }
        }
    }

    /** A tag names the studio, so a change of its particulars affects all. */
    private Set<String> touched(List<Revision> batch) {
        List<RecordKey> keys = batch.stream().map(Revision::key).distinct().toList();
        if (keys.stream().anyMatch(key -> is(key, Kinds.STUDIO))) {
            return new LinkedHashSet<>(archive.ledger().allIdsEverUsed(Kinds.PIECE));
        }
        Set<String> pieces = Dependents.of(archive.ledger(), keys);
        keys.stream()
                .filter(key -> is(key, Kinds.ISSUED_PAPER))
                .flatMap(key -> archive.ledger().references(key).stream())
                .filter(named -> is(named, Kinds.PIECE))
                .forEach(named -> pieces.add(named.id()));
        return pieces;
    }

    private static boolean is(RecordKey key, Kind<?> kind) {
        return key.kind().equals(kind.name());
    }

    /** Computes and stores the rows of these pieces, on all processors. */
    private void find(List<String> numbers, Progress progress) {
        TagFinder finder = TagFinder.of(archive, numbers.size() >= MANY);
        AtomicInteger done = new AtomicInteger();
        inLots(numbers).parallel().forEach(lot -> {
            progress.orStop();
            progress.at(done.getAndAdd(lot.size()), numbers.size(), LOOKING);
            Map<String, List<Standing>> found = finder.of(lot);
            // The records may be newer than requested, so the stamp is read after them.
            rows.keep(lot, found, archive.ledger().lastSequence());
        });
    }

    private static Stream<List<String>> inLots(List<String> numbers) {
        return IntStream.range(0, (numbers.size() + TOGETHER - 1) / TOGETHER)
                .mapToObj(i -> numbers.subList(i * TOGETHER, Math.min(numbers.size(), (i + 1) * TOGETHER)));
    }

    /** Brings the table up and returns the pieces whose status in any market changed after {@code sequence}. */
    public List<String> changedAfter(long sequence, Progress progress) {
        bringUp(progress);
        return rows.changedAfter(sequence);
    }

    /**
     * The status of these pieces by number, market by market, without withdrawn and unreadable ones. Up to date unless that
     * {@link #takesLong}; then as of the last update.
     */
    public Map<String, List<Standing>> of(Collection<String> numbers) {
        if (rows.sequence() < archive.ledger().lastSequence() && !takesLong()) {
            bringUp(Progress.UNWATCHED);
        }
        return rows.of(numbers);
    }

    /**
     * Compares every row with what the ledger now gives.
     *
     * @throws ArchiveProblem if the ledger cannot be read for it
     */
    public List<Finding> check(Progress progress) {
        bringUp(progress);
        try {
            return compared(progress);
        } catch (JdbiException e) {
            throw new ArchiveProblem(
                    Message.of("label.standing.not-compared", "why", String.valueOf(e.getMessage()))
                            .inEnglish(),
                    e);
        }
    }

    private List<Finding> compared(Progress progress) {
        TagFinder finder = TagFinder.of(archive, true);
        List<Finding> findings = new ArrayList<>();
        Map<String, List<Standing>> kept = new LinkedHashMap<>(rows.all());
        List<String> numbers = archive.ledger().allIdsEverUsed(Kinds.PIECE);
        inLots(numbers).forEach(lot -> {
            progress.orStop();
            Map<String, List<Standing>> found = finder.of(lot);
            for (String number : lot) {
                List<Standing> expected = found.getOrDefault(number, List.of());
                List<Standing> stands = kept.getOrDefault(number, List.of());
                if (!expected.equals(stands)) {
                    findings.add(new Finding(
                                    where(number),
                                    Message.of("label.standing.differs", "found", stands, "expected", expected)
                                            .inEnglish())
                            .meaning(Consequence.DERIVED));
                }
                kept.remove(number);
            }
        });
        kept.keySet()
                .forEach(number -> findings.add(new Finding(
                                where(number),
                                Message.of("label.standing.no-such-piece").inEnglish())
                        .meaning(Consequence.DERIVED)));
        return findings;
    }

    private static String where(String number) {
        return Message.of("label.standing.where", "piece", number).inEnglish();
    }

    @Override
    public void close() {
        rows.close();
    }
}
