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
import tenterbook.colour.Ciede2000;
import tenterbook.colour.Lab;
import tenterbook.colour.PaletteColour;
import tenterbook.ledger.Progress;
import tenterbook.piece.Piece;
import tenterbook.recipe.BoardUse;
import tenterbook.recipe.Clamping;
import tenterbook.search.Facet;
import tenterbook.search.Order;
import tenterbook.search.PieceIndex;
import tenterbook.search.PieceQuery;
import tenterbook.search.Span;

/**
 * Measures an archive of 100,000 pieces (or as many as the first argument, {@code -Dexec.args=5000}, says), kept in {@code target/bench-archive} so
 * that only the first run writes it:
 *
 * <pre>MAVEN_OPTS=-Xmx1g mvn -q -Pbench compile exec:java</pre>
 *
 * <p>{@code -Druns=150} makes fewer runs; {@code -Dshort=true} leaves out re-index and words. Queries are drawn with a fixed seed and differ from run to run of the loop; each kind is warmed up before it is timed.
 */
public final class ArchiveBench {
    private static final int RUNS = Integer.getInteger("runs", 1000);
    private static final int WARM = Math.min(300, RUNS);
    private final Random random = new Random(9);
    private final PieceIndex index;
    private final Archive archive;

    private ArchiveBench(Archive archive, PieceIndex index) {
        this.archive = archive;
        this.index = index;
    }

    public static void main(String[] args) throws Exception {
        int pieces = args.length > 0 ? Integer.parseInt(args[0]) : 100_000;
        Path folder = Path.of("target", "bench-archive-" + pieces);
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
            try (PieceIndex index = PieceIndex.open(archive)) {
                System.out.printf("opened in %.0f ms%n", (System.nanoTime() - start) / 1e6);
                index.await(Duration.ofMinutes(10));
                ArchiveBench bench = new ArchiveBench(archive, index);
                if (!Boolean.getBoolean("short")) {
                    bench.reindex();
                    bench.words();
                }
                bench.colours();
                bench.suggestions();
                bench.pieces();
            }
        }
    }

    private void reindex() throws InterruptedException {
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
        index.reindex(Progress.UNWATCHED);
        double seconds = (System.nanoTime() - start) / 1e9;
        watching.interrupt();
        watching.join();
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

    private void words() {
        time("text, facets and ranges mixed", RUNS, this::mixed);
        time("  every piece, newest first, all facets", RUNS / 2, () -> PieceQuery.EVERYTHING);
        time("  one common word, by relevance", RUNS / 2, () -> PieceQuery.EVERYTHING.withText(word()));
        time(
                "  two words, one unfinished",
                RUNS / 2,
                () -> PieceQuery.EVERYTHING.withText(word() + " " + word().substring(0, 1)));
        time(
                "  misspelt, nothing as typed",
                RUNS / 2,
                () -> PieceQuery.EVERYTHING.withText("herno wier" + "xyz".charAt(random.nextInt(3))));
    }

    private Lab colour() {
        return new Lab(15 + random.nextDouble() * 75, random.nextGaussian() * 18, random.nextGaussian() * 20 - 4);
    }

    private void colours() {
        time("colour within 10", RUNS, () -> PieceQuery.EVERYTHING.withColour(colour(), 10, 0));
        time("colour within 10 on at least 30 %", RUNS, () -> PieceQuery.EVERYTHING.withColour(colour(), 10, 0.3));
        time("colour within 5", RUNS, () -> PieceQuery.EVERYTHING.withColour(colour(), 5, 0));
        time("colour within 20", RUNS / 2, () -> PieceQuery.EVERYTHING.withColour(colour(), 20, 0));
        time("colour within 40", RUNS / 2, () -> PieceQuery.EVERYTHING.withColour(colour(), 40, 0));
        bruteForce();
    }

    /** The same colours from the ledger, every one compared by the plain formula. */
    private void bruteForce() {
        List<double[]> pieces = archive.ledger().everGiven(Kinds.PIECE).stream()
                .map(number -> archive.piece(number).orElseThrow())
                .map(this::palette)
                .toList();
        int runs = 40;
        Timings scan = new Timings("the same by scanning with the plain formula", runs);
        Timings ours = new Timings("the same queries here", runs);
        long expected = 0;
        long missed = 0;
        for (int i = 0; i < runs; i++) {
            double within = 3 + random.nextInt(18);
            PieceQuery query = PieceQuery.EVERYTHING.withColour(colour(), within, 0);
            long[] found = new long[2];
            scan.run(() -> found[0] = scanned(pieces, query.colour(), within));
            ours.run(() -> found[1] = index.search(query).total());
            expected += found[0];
            missed += Math.abs(found[0] - found[1]);
        }
        scan.print();
        ours.print();
        System.out.printf(
                "%-58s %.1f times as fast at p50; recall %.6f over %,d matches%n",
                "", scan.busyMillis(0.5) / ours.busyMillis(0.5), 1 - missed / (double) expected, expected);
    }

    private double[] palette(Piece piece) {
        List<PaletteColour> palette = archive.ledger()
                .find(Kinds.PHOTO, piece.photos().get(0).photo().hex())
                .orElseThrow()
                .record()
                .palette();
        double[] packed = new double[3 * palette.size()];
        for (int i = 0; i < palette.size(); i++) {
            Lab lab = palette.get(i).colour();
            packed[3 * i] = lab.lightness();
            packed[3 * i + 1] = lab.a();
            packed[3 * i + 2] = lab.b();
        }
        return packed;
    }

    private static long scanned(List<double[]> pieces, Lab wanted, double within) {
        long found = 0;
        for (double[] palette : pieces) {
            double nearest = Double.POSITIVE_INFINITY;
            for (int i = 0; i < palette.length; i += 3) {
                nearest = Math.min(
                        nearest,
                        Ciede2000.difference(
                                wanted.lightness(),
                                wanted.a(),
                                wanted.b(),
                                palette[i],
                                palette[i + 1],
                                palette[i + 2]));
            }
            found += nearest <= within ? 1 : 0;
        }
        return found;
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
        List<String> numbers = archive.ledger().everGiven(Kinds.PIECE);
        Timings timings = new Timings("a piece's page: piece, clampings, boards, cloths", RUNS);
        for (int i = 0; i < WARM; i++) {
            load(numbers.get(random.nextInt(numbers.size())));
        }
        for (int i = 0; i < RUNS; i++) {
            String number = numbers.get(random.nextInt(numbers.size()));
            timings.run(() -> load(number));
        }
        timings.print();
        Timings board = new Timings("a board's page: all its pieces", 100);
        for (int i = 0; i < 100; i++) {
            int which = 1 + random.nextInt(60);
            board.run(() -> index.byBoard("B%02d".formatted(which)));
        }
        board.print();
    }

    private void load(String number) {
        Piece piece = archive.piece(number).orElseThrow();
        for (Clamping clamping : archive.clampingsOf(piece)) {
            clamping.boards().stream().map(BoardUse::board).map(BoardId::value).forEach(archive::board);
            clamping.cuts().forEach(cut -> archive.cloth(cut.cloth().value()));
        }
    }
}
