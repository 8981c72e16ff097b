package tenterbook.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.NoMergePolicy;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.apache.lucene.util.FixedBitSet;
import org.junit.jupiter.api.Test;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.search.colour.ColourMatch;
import tenterbook.search.colour.ColourRangeSearch;
import tenterbook.search.colour.ColourTree;
import tenterbook.search.colour.NearestDistances;
import tenterbook.search.colour.NearestPalettes;
import tenterbook.search.colour.PaletteDistance;
import tenterbook.search.find.Segments;

/** What is divided among processors only where a segment is large, against comparing everything by the plain formula. */
class LargeTreeTest {
    private static final int DOCUMENTS = 12_000;

    /** L, a, b, share of about six colours a document; some documents have none, some colours no share. */
    private static ColourTree tree(Random random, int[] start) {
        double[] packed = new double[4 * 9 * DOCUMENTS];
        int used = 0;
        for (int doc = 0; doc < DOCUMENTS; doc++) {
            int colours = doc % 50 == 7 ? 0 : doc % 13 == 0 ? 9 : 3 + random.nextInt(6);
            for (int k = 0; k < colours; k++, used++) {
                packed[4 * used] = 10 + random.nextDouble() * 85;
                packed[4 * used + 1] = random.nextGaussian() * 16;
                packed[4 * used + 2] = random.nextGaussian() * 20 - 6;
                packed[4 * used + 3] = doc % 31 == 0 || k == 5 ? Double.NaN : 0.02 + random.nextDouble();
            }
            start[doc + 1] = used;
        }
        return new ColourTree(Arrays.copyOf(packed, 4 * used), start);
    }

    @Test
    void theNearestPalettesAreThoseOfComparingAll() {
        Random random = new Random(24);
        int[] start = new int[DOCUMENTS + 1];
        ColourTree tree = tree(random, start);
        assertThat(tree.size()).isGreaterThan(55_000);
        for (int turn = 0; turn < 12; turn++) {
            int doc = 26 * (1 + random.nextInt(400)) + turn % 2;
            doc += start[doc] == start[doc + 1] ? 1 : 0;
            double[] asked = PaletteDistance.of(tree, doc);
            PaletteDistance distance = new PaletteDistance(asked);
            FixedBitSet documents = new FixedBitSet(DOCUMENTS);
            for (int other = 0; other < DOCUMENTS; other++) {
                if (other != doc && start[other] < start[other + 1] && (turn % 3 > 0 || other % 4 > 0)) {
                    documents.set(other);
                }
            }
            Map<Integer, Double> all = new HashMap<>();
            for (int other = documents.nextSetBit(0); other < DOCUMENTS; ) {
                all.put(other, distance.to(tree, other, Double.POSITIVE_INFINITY));
                other = other + 1 < DOCUMENTS ? documents.nextSetBit(other + 1) : DOCUMENTS;
            }
            List<Integer> expected = all.keySet().stream()
                    .sorted(Comparator.comparingDouble(all::get))
                    .limit(24)
                    .toList();
            NearestDistances nearest = new NearestDistances(24, Double.POSITIVE_INFINITY);
            new NearestPalettes(tree, new PaletteDistance(asked)).nearest(documents, 0, nearest);
            assertThat(nearest.worst()).isEqualTo(all.get(expected.get(23)));
            assertThat(found(nearest).keySet()).containsAll(expected);
            found(nearest).forEach((other, its) -> assertThat(its).isEqualTo(all.get(other)));
            double limit = turn % 2 == 0 ? all.get(expected.get(5)) : 3 + turn;
            NearestDistances near = new NearestDistances(Integer.MAX_VALUE, limit);
            new NearestPalettes(tree, new PaletteDistance(asked)).nearest(documents, 0, near);
            all.values().removeIf(its -> its > limit);
            assertThat(found(near)).isEqualTo(all);
        }
    }

    private static Map<Integer, Double> found(NearestDistances nearest) {
        return nearest.all().stream()
                .collect(Collectors.toMap(NearestDistances.Near::doc, NearestDistances.Near::distance));
    }

    @Test
    void palettesEquallyFarAreAllHandedOutForTheirNumbersToDecide() {
        double[] packed = new double[4 * 200];
        int[] start = new int[201];
        for (int doc = 0; doc < 200; doc++) {
            double far = doc % 4 == 0 ? 3 : 3 + doc * 0.01;
            packed[4 * doc] = 39;
            packed[4 * doc + 1] = 0.7 * far;
            packed[4 * doc + 2] = -43.1 * far;
            packed[4 * doc + 3] = 0.3;
            start[doc + 1] = doc + 1;
        }
        NearestDistances nearest = new NearestDistances(10, Double.POSITIVE_INFINITY);
        FixedBitSet all = new FixedBitSet(200);
        all.set(0, 200);
        new NearestPalettes(new ColourTree(packed, start), new PaletteDistance(new double[] {39, 0.7, -43.1, 1}))
                .nearest(all, 0, nearest);
        assertThat(found(nearest).keySet())
                .containsAll(IntStream.range(0, 50).mapToObj(i -> 4 * i).toList());
    }

    @Test
    void whatIsWithinReachIsThatOfComparingAll() {
        Random random = new Random(25);
        int[] start = new int[DOCUMENTS + 1];
        ColourTree tree = tree(random, start);
        for (int turn = 0; turn < 40; turn++) {
            double within = 0.5 + random.nextInt(40) / 2.0;
            double share = turn % 3 == 0 ? random.nextDouble() : 0;
            Lab asked = new Lab(15 + random.nextDouble() * 75, random.nextGaussian() * 18, random.nextGaussian() * 20);
            FixedBitSet expected = new FixedBitSet(DOCUMENTS);
            double[] sums = new double[DOCUMENTS];
            for (int i = 0; i < tree.size(); i++) {
                double difference = Ciede2000.difference(
                        asked.lightness(), asked.a(), asked.b(), tree.lightness[i], tree.a[i], tree.b[i]);
                if (difference <= within) {
                    expected.set(tree.doc[i]);
                    sums[tree.doc[i]] += Double.isNaN(tree.share[i]) ? 0 : tree.share[i];
                }
            }
            IntStream.range(0, DOCUMENTS)
                    .filter(doc -> share > 0 && sums[doc] < share - ColourMatch.SHARE_SLACK)
                    .forEach(expected::clear);
            assertThat(new ColourRangeSearch(tree, asked).within(within, share, DOCUMENTS))
                    .isEqualTo(expected);
        }
    }

    @Test
    void theNearestColoursAreThoseOfComparingAllAndADocumentCountsOnce() {
        Random random = new Random(26);
        int[] start = new int[DOCUMENTS + 1];
        ColourTree tree = tree(random, start);
        for (int turn = 0; turn < 40; turn++) {
            Lab asked = new Lab(15 + random.nextDouble() * 75, random.nextGaussian() * 18, random.nextGaussian() * 20);
            FixedBitSet documents = new FixedBitSet(DOCUMENTS);
            Map<Integer, Double> all = new HashMap<>();
            for (int i = 0; i < tree.size(); i++) {
                if (turn % 3 > 0 || tree.doc[i] % 4 > 0) {
                    documents.set(tree.doc[i]);
                    double difference = Ciede2000.difference(
                            asked.lightness(), asked.a(), asked.b(), tree.lightness[i], tree.a[i], tree.b[i]);
                    all.merge(tree.doc[i], difference, Math::min);
                }
            }
            int wanted = turn % 5 == 0 ? 900 : 24;
            double worst =
                    all.values().stream().sorted().skip(wanted - 1).findFirst().orElseThrow();
            NearestDistances nearest = new NearestDistances(wanted, turn % 2 == 0 ? Double.POSITIVE_INFINITY : 60);
            new ColourRangeSearch(tree, asked).nearest(documents, 0, nearest);
            all.values().removeIf(its -> its > worst);
            assertThat(found(nearest)).isEqualTo(all);
        }
    }

    @Test
    void segmentsWorkedOnSideBySideAnswerInTheirOrderAndTellTheirFaults() throws Exception {
        try (ByteBuffersDirectory directory = new ByteBuffersDirectory()) {
            IndexWriterConfig config = new IndexWriterConfig().setMergePolicy(NoMergePolicy.INSTANCE);
            try (IndexWriter writer = new IndexWriter(directory, config)) {
                for (int segment = 1; segment <= 5; segment++) {
                    for (int i = 0; i < 2000 * segment; i++) {
                        writer.addDocument(new Document());
                    }
                    writer.commit();
                }
            }
            try (DirectoryReader reader = DirectoryReader.open(directory)) {
                assertThat(Segments.each(
                                reader.leaves(),
                                leaf -> leaf.ord + ":" + leaf.reader().maxDoc()))
                        .containsExactly("0:2000", "1:4000", "2:6000", "3:8000", "4:10000");
                assertThatThrownBy(() -> Segments.each(reader.leaves(), leaf -> {
                            throw new IOException("segment " + leaf.ord + " cannot be read");
                        }))
                        .isInstanceOf(IOException.class)
                        .hasMessageContaining("cannot be read");
                assertThatThrownBy(() -> Segments.each(reader.leaves(), leaf -> {
                            throw new UncheckedIOException("rebuild it", new IOException("bad block"));
                        }))
                        .isInstanceOf(UncheckedIOException.class)
                        .hasMessage("rebuild it");
            }
        }
    }
}
