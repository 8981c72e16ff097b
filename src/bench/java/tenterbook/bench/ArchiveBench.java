package tenterbook.bench;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.board.BoardId;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Piece;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Clamping;
import tenterbook.search.PieceIndex;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.Span;
import tenterbook.web.piece.TagFacet;

/**
 * Measures an archive of 100,000 pieces (or as many as the first argument, {@code -Dexec.args=5000}, says), kept in {@code target/bench-archive-cloth-…} so
 * that only the first run writes it:
 *
 * <pre>MAVEN_OPTS=-Xmx1g mvn -q -Pbench compile exec:java</pre>
 *
 * <p>{@code -Druns=150} makes fewer runs; {@code -Dparts=words,colours} only these of reindex, words, colours, alike, suggestions and pieces. Queries are drawn with a fixed seed and differ from run to run of the loop; each kind is warmed up before it is timed.
 */
public final class ArchiveBench {
    private static final int RUNS = Integer.getInteger("runs", 1000);
    private static final List<String> PARTS =
            List.of(System.getProperty("parts", "reindex,words,colours,alike,suggestions,pieces")
                    .split(","));
    private static final int WARM = Math.min(300, RUNS);
    private final Random random = new Random(9);
    private final PieceIndex index;
    private final Archive archive;
    private final TagTable tags;

    private ArchiveBench(Archive archive, TagTable tags, PieceIndex index) {
        this.archive = archive;
        this.tags = tags;
        this.index = index;
    }

    public static void main(String[] args) throws Exception {
        int pieces = args.length > 0 ? Integer.parseInt(args[0]) : 100_000;
        Path folder = Path.of("target", "bench-archive-cloth-" + pieces);
        System.out.printf(
                "%,d pieces; %d processors, heap at most %,d MB, Java %s%n",
                pieces,
                Runtime.getRuntime().availableProcessors(),
                Runtime.getRuntime().maxMemory() >> 20,
                Runtime.version());
        Files.createDirectories(folder);
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            if (archive.ledger().count(Kinds.PIECE) == 0) {
                long start = System.nanoTime();
                BenchArchive.write(archive, pieces);
                System.out.printf("written through the ledger in %.1f s%n", (System.nanoTime() - start) / 1e9);
            }
            long start = System.nanoTime();
            try (TagTable tags = TagTable.open(archive);
                    PieceIndex index = PieceIndex.open(archive, new TagFacet(tags))) {
                System.out.printf("opened in %.0f ms%n", (System.nanoTime() - start) / 1e6);
                if (!index.await(Duration.ofHours(1))) {
                    throw new IllegalStateException("The index was not ready within an hour; nothing was measured");
                }
                ArchiveBench bench = new ArchiveBench(archive, tags, index);
                part("reindex", bench::reindex);
                part("words", bench::words);
                part("colours", () -> new ColourBench(archive, index, Math.max(20, RUNS / 5)).run());
                part("alike", () -> new ColourBench(archive, index, Math.max(20, RUNS / 5)).alike());
                part("suggestions", bench::suggestions);
                part("pieces", bench::pieces);
            }
        }
    }

    private static void part(String name, Runnable work) {
        if (PARTS.contains(name)) {
            System.out.printf(
                    "-- %s; load average %.1f%n",
                    name, ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
            work.run();
        }
    }

    private void reindex() {
        System.gc();
        AtomicLong peak = new AtomicLong();
        Thread watching = new Thread(() -> {
            try {
                while (true) {
                    Runtime runtime = Runtime.getRuntime();
                    peak.accumulateAndGet(runtime.totalMemory() - runtime.freeMemory(), Math::max);
                    Thread.sleep(20);
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        watching.setDaemon(true);
        watching.start();
        long busy = busyNanos();
        long start = System.nanoTime();
        tags.rebuild(Progress.UNWATCHED);
        System.out.printf(
                "the table of tags %.1f s by the clock, %.1f s busy on all processors together%n",
                (System.nanoTime() - start) / 1e9, (busyNanos() - busy) / 1e9);
        busy = busyNanos();
        start = System.nanoTime();
        index.reindex(Progress.UNWATCHED);
        double seconds = (System.nanoTime() - start) / 1e9;
        watching.interrupt();
        System.out.printf(
                "re-index %.1f s by the clock, %.1f s busy on all processors together, load average %.1f; heap in use at most %,d MB (garbage included)%n",
                seconds,
                (busyNanos() - busy) / 1e9,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
                peak.get() >> 20);
    }

    private static long busyNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    private void time(String name, int runs, java.util.function.Supplier<PieceQuery> queries) {
        for (int i = 0; i < WARM; i++) {
            index.search(queries.get());
        }
        Timings timings = new Timings(name, runs);
        long found = 0;
        for (int i = 0; i < runs; i++) {
            PieceQuery query = queries.get();
            long[] total = new long[1];
            timings.run(() -> total[0] = index.search(query).total());
            found += total[0];
        }
        timings.print();
        System.out.printf("%-58s %,d pieces found on average%n", "", found / runs);
    }

    private String word() {
        return BenchArchive.WORDS[random.nextInt(BenchArchive.WORDS.length)];
    }

    private PieceQuery mixed() {
        PieceQuery all = PieceQuery.EVERYTHING;
        String board = "B%02d".formatted(1 + random.nextInt(60));
        return switch (random.nextInt(10)) {
            case 0 -> all.withPage(1 + random.nextInt(20));
            case 1 -> all.withText(word()).with(Facet.BOARD, board);
            case 2 -> all.withText(word() + " " + word().substring(0, 1));
            case 3 -> all.withText("\"" + word() + " " + word() + "\"");
            case 4 -> all.with(Facet.BOARD, board).with(Facet.STATUS, "sold").withDips(Span.read("4..8"));
            case 5 -> all.withText("V%02d-".formatted(random.nextInt(25)) + "%05d".formatted(random.nextInt(100_000)));
            case 6 -> all.withText(word() + " -" + word()).withSort(Order.SIZE);
            case 7 -> all.withText("heron wier" + (random.nextBoolean() ? "" : " sycamoor"));
            case 8 -> all.with(Facet.DYE, "weld").with(Facet.YEAR, "2019").with(Facet.FAULT, "leak");
            default -> all.withText(word() + " " + word() + " " + word());
        };
    }

    private static final String[] STATES = {"lacking", "current", "out-of-date", "none-printed", "cannot-be-made"};

    private String tag() {
        return (random.nextBoolean() ? "eu:" : "us:") + STATES[random.nextInt(STATES.length)];
    }

    private void words() {
        time("text, facets and ranges mixed", RUNS, this::mixed);
        time("  every piece, newest first, all facets", RUNS / 2, () -> PieceQuery.EVERYTHING);
        time("  one common word, by relevance", RUNS / 2, () -> PieceQuery.EVERYTHING.withText(word()));
        time(
                "  two words, one unfinished",
                RUNS / 2,
                () -> PieceQuery.EVERYTHING.withText(word() + " " + word().substring(0, 1)));
        time("  hang tag alone", RUNS / 2, () -> PieceQuery.EVERYTHING.with(TagFacet.TAG, tag()));
        time("  hang tag with the mixture above", RUNS / 2, () -> mixed().with(TagFacet.TAG, tag()));
        time(
                "  misspelt, nothing as typed",
                RUNS / 2,
                () -> PieceQuery.EVERYTHING.withText("herno wier" + "xyz".charAt(random.nextInt(3))));
    }

    private void suggestions() {
        String[] typed = {"h", "her", "hreon", "v", "v24", "v2400", "b0", "pom", "porto s", "板", "salt p", "walnt"};
        Timings timings = new Timings("suggestions while typing", RUNS);
        for (int i = 0; i < WARM; i++) {
            index.suggest(typed[i % typed.length], 10);
        }
        for (int i = 0; i < RUNS; i++) {
            String now = typed[i % typed.length];
            timings.run(() -> index.suggest(now, 10));
        }
        timings.print();
    }

    private void pieces() {
        List<String> numbers = archive.ledger().allIdsEverUsed(Kinds.PIECE);
        Timings timings = new Timings("a piece's page: piece, clampings, boards, cloths", RUNS);
        for (int i = 0; i < WARM; i++) {
            load(numbers.get(random.nextInt(numbers.size())));
        }
        for (int i = 0; i < RUNS; i++) {
            String number = numbers.get(random.nextInt(numbers.size()));
            timings.run(() -> load(number));
        }
        timings.print();
        Timings board = new Timings("a board's page: 60 of its pieces", 100);
        for (int i = 0; i < 100; i++) {
            int which = 1 + random.nextInt(60);
            board.run(() -> index.byBoard("B%02d".formatted(which), 0, 60));
        }
        board.print();
        Timings whole = new Timings("  every piece of a board at once", 50);
        for (int i = 0; i < 50; i++) {
            int which = 1 + random.nextInt(60);
            whole.run(() -> index.byBoard("B%02d".formatted(which)));
        }
        whole.print();
    }

    private void load(String number) {
        Piece piece = archive.piece(number).orElseThrow();
        for (Clamping clamping : archive.clampingsOf(piece)) {
            clamping.boards().stream().map(BoardUse::board).map(BoardId::value).forEach(archive::board);
            clamping.cuts().forEach(cut -> archive.cloth(cut.cloth().value()));
        }
    }
}
