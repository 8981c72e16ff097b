package tenterbook.bench;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.SheetSize;
import tenterbook.labelling.issue.LabelIssuer;
import tenterbook.labelling.paper.LabelPaper;
import tenterbook.labelling.rule.Market;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Piece;

/**
 * Measures printing a thousand hang tags, no two alike, each with its square code:
 *
 * <pre>MAVEN_OPTS=-Xmx1g mvn -q -Pbench compile exec:java -Dmain.class=tenterbook.bench.LabelBench</pre>
 *
 * <p>{@code -Dexec.args=5000} prints more; {@code -Drounds=N} repeats. Beside the times stand the bytes of the PDF, the greatest
 * heap in use and the same for a tenth of the labels: memory is flat where the ratio of heaps is far under ten.
 */
public final class LabelBench {
    private static final int ROUNDS = Integer.getInteger("rounds", 7);

    private LabelBench() {}

    public static void main(String[] args) throws Exception {
        int count = args.length > 0 ? Integer.parseInt(args[0]) : 1000;
        System.out.printf(
                Locale.ROOT,
                "%d labels; %d processors, heap at most %,d MB, Java %s, load average %.1f%n",
                count,
                Runtime.getRuntime().availableProcessors(),
                Runtime.getRuntime().maxMemory() >> 20,
                Runtime.version(),
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
        Path folder = Files.createTempDirectory("tenterbook-labels");
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            List<Saved<Piece>> pieces = filled(archive, count);
            PrintSettings tag = PrintSettings.of(LabelKind.HANG_TAG, Market.US)
                    .on(SheetSize.A4)
                    .withPrice();
            long few = 0;
            for (int part : new int[] {Math.max(1, count / 10), count}) {
                few = measured(archive, pieces.subList(0, part), tag, few);
            }
        } finally {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
    }

    private static long measured(Archive archive, List<Saved<Piece>> pieces, PrintSettings tag, long fewHeap)
            throws IOException {
        long[] issue = new long[ROUNDS];
        long[] words = new long[ROUNDS];
        long[] setting = new long[ROUNDS];
        long heap = 0;
        int bytes = 0;
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            List<LabelText> texts = LabelText.of(
                    PieceReader.all(archive, pieces.stream().map(Saved::record).toList()), tag);
            words[round] = System.nanoTime() - start;
            System.gc();
            long before = used();
            long[] most = {0};
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            start = System.nanoTime();
            LabelPaper.print(texts, tag, out, Clock.systemUTC(), Progress.UNWATCHED);
            setting[round] = System.nanoTime() - start;
            bytes = out.size();
            LabelPaper.print(texts, tag, new ByteArrayOutputStream(), Clock.systemUTC(), new Progress() {
                @Override
                public void at(long done, long total, String what) {
                    if (done % Math.max(1, total / 4) == 0) {
                        System.gc();
                        most[0] = Math.max(most[0], used() - before);
                    }
                }

                @Override
                public boolean cancelled() {
                    return false;
                }
            });
            heap = Math.max(heap, most[0]);
            start = System.nanoTime();
            LabelIssuer.print(
                    archive, pieces, tag, Clock.systemUTC(), "bench", tenterbook.ledger.file.Progress.UNWATCHED);
            issue[round] = System.nanoTime() - start;
        }
        System.out.printf(
                Locale.ROOT,
                "%5d tags: words %s; setting %s; issuing, with words and ledger, %s ms (first, median); %,d bytes, %.0f each; heap in use while setting %,d kB%s%n",
                pieces.size(),
                millis(words),
                millis(setting),
                millis(issue),
                bytes,
                bytes / (double) pieces.size(),
                heap >> 10,
                fewHeap == 0
                        ? ""
                        : String.format(Locale.ROOT, ", %.1f times that of a tenth", heap / (double) fewHeap));
        return heap;
    }

    private static String millis(long[] nanos) {
        double first = nanos[0] / 1e6;
        long[] sorted = nanos.clone();
        Arrays.sort(sorted);
        return String.format(Locale.ROOT, "%.0f, %.0f", first, sorted[sorted.length / 2] / 1e6);
    }

    private static long used() {
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private static List<Saved<Piece>> filled(Archive archive, int count) throws IOException {
        archive.ledger().write("bench", act -> {
            act.create(
                    Kinds.STUDIO,
                    read(
                            Kinds.STUDIO,
                            "{'name':'Oficina Valderim','maker':'Inês Valderim','place':'Porto Sarelho, Portugal','dyedIn':'Portugal'}"));
            act.create(
                    Kinds.CLOTH,
                    read(
                            Kinds.CLOTH,
                            "{'id':'LV','name':'linen voile','content':[{'fibre':'linen','percent':100.0}],'wovenIn':'Belgium'}"));
            act.create(
                    Kinds.BOARD_PAIR,
                    read(Kinds.BOARD_PAIR, "{'id':'B02','title':'Heron weir','states':[{'name':'II'}]}"));
            act.create(Kinds.LOT, read(Kinds.LOT, "{'id':'weld','role':'dye','name':'weld'}"));
            act.create(
                    Kinds.CLAMPING,
                    read(
                            Kinds.CLAMPING,
                            "{'id':'C24-004','boards':[{'board':'B02','state':'II'}],'cuts':[{'cloth':'LV'}],'steps':[{'kind':'bath','charges':[{'lot':'weld'}]}]}"));
            for (int i = 0; i < count; i++) {
                act.create(
                        Kinds.PIECE,
                        read(
                                Kinds.PIECE,
                                "{'number':'V24-%04d','title':'Heron weir, %s cutting','category':'scarf','made':[{'clamping':'C24-004'}]}"
                                        .formatted(i, ordinal(i))));
            }
            return null;
        });
        return IntStream.range(0, count)
                .mapToObj(i -> archive.ledger()
                        .find(Kinds.PIECE, "V24-%04d".formatted(i))
                        .orElseThrow())
                .toList();
    }

    private static String ordinal(int i) {
        return List.of("first", "second", "third", "fourth", "fifth", "sixth", "seventh")
                        .get(i % 7) + " of " + i;
    }

    private static <T> T read(Kind<T> kind, String json) {
        return kind.codec().fromText(json.replace('\'', '"'));
    }
}
