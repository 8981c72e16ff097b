package tenterbook.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static tenterbook.search.Demo.counts;
import static tenterbook.search.Demo.numbers;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.search.facet.FacetGroup;
import tenterbook.search.find.SearchResult;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.query.Facet;
import tenterbook.search.query.PieceQuery;

/** A facet whose values the index does not know how to find is searched and counted like its own. */
class OutsideFacetsTest {
    private static final Facet DRAWER =
            Facet.outside("drawer", conventions -> "Drawer", Facet.STATUS, List.of("upper", "lower", "none"));

    /** Tells where pieces lie, and that those set since a sequence lie elsewhere. */
    private static final class Drawers implements OutsideFacets {
        private final Archive archive;
        private final Map<String, String> where = new ConcurrentHashMap<>();
        private final Map<String, Long> since = new ConcurrentHashMap<>();
        private final List<String> asked = java.util.Collections.synchronizedList(new ArrayList<>());
        private String version = "1";
        private volatile boolean broken;
        private volatile Error error;
        private volatile CountDownLatch slow;

        Drawers(Archive archive) {
            this.archive = archive;
        }

        void put(String number, String drawer) {
            where.put(number, drawer);
            since.put(number, archive.ledger().lastSequence() + 1);
        }

        @Override
        public List<Facet> facets() {
            return List.of(DRAWER);
        }

        @Override
        public String version() {
            return version;
        }

        @Override
        public boolean takesLong() {
            return slow != null;
        }

        @Override
        public Collection<String> changedAfter(long sequence, Progress progress) {
            if (error != null) {
                throw error;
            }
            CountDownLatch waiting = slow;
            if (waiting != null) {
                try {
                    waiting.await();
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                slow = null;
            }
            if (broken) {
                throw new IllegalStateException("the drawers cannot be opened");
            }
            return since.entrySet().stream()
                    .filter(each -> each.getValue() > sequence)
                    .map(Map.Entry::getKey)
                    .toList();
        }

        @Override
        public Map<String, List<Given>> of(Collection<String> numbers) {
            asked.addAll(numbers);
            Map<String, List<Given>> given = new LinkedHashMap<>();
            numbers.forEach(number -> {
                String drawer = where.getOrDefault(number, "none");
                given.put(number, List.of(new Given(DRAWER, drawer, drawer + " drawer")));
            });
            return given;
        }
    }

    @TempDir
    Path folder;

    private Archive archive;
    private Drawers drawers;
    private PieceIndex index;

    @BeforeEach
    void open() {
        archive = Demo.archive(folder);
        Demo.fill(archive);
        drawers = new Drawers(archive);
        drawers.where.putAll(Map.of("V24-001", "upper", "V24-002", "upper", "V24-003", "lower"));
        index = PieceIndex.open(archive, drawers);
    }

    @AfterEach
    void close() {
        index.close();
        archive.close();
    }

    /** A write that changes no piece. */
    private void writeElsewhere(String name) {
        Demo.save(archive, Kinds.PARTY, new Party(new PartyId("nobody"), name, "", "", ""));
    }

    @Test
    void itNarrowsAndIsCountedWithWordsAndOtherFacets() {
        SearchResult all = index.search(PieceQuery.EVERYTHING);
        assertThat(counts(all, DRAWER)).isEqualTo(Map.of("upper", 2, "lower", 1, "none", 2));
        assertThat(all.facets())
                .as("shown after the facet it was put after")
                .extracting(FacetGroup::name)
                .containsSubsequence("status", "drawer", "category");

        PieceQuery upper = index.query(Map.of("drawer", List.of("Upper")));
        SearchResult found = index.search(upper);
        assertThat(numbers(found)).containsExactlyInAnyOrder("V24-001", "V24-002");
        assertThat(counts(found, DRAWER))
                .as("the others are counted beside it")
                .isEqualTo(Map.of("upper", 2, "lower", 1, "none", 2));
        assertThat(counts(found, Facet.CLOTH)).isEqualTo(Map.of("SH", 2));
        assertThat(counts(index.search(upper.with(Facet.STATUS, "sold")), DRAWER))
                .isEqualTo(Map.of("upper", 1));
        assertThat(numbers(index.search(upper.withText("noon")))).containsExactly("V24-002");
        assertThat(numbers(index.search(upper.with(DRAWER, "lower")))).hasSize(3);
        assertThat(index.query(upper.toParameters())).isEqualTo(upper);
    }

    @Test
    void aValueThatIsNoneOfItsChoicesIsRefusedWithAllOfThem() {
        assertThatThrownBy(() -> index.query(Map.of("drawer", List.of("attic"))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("upper, lower, none")
                .hasMessageContaining("attic");
    }

    @Test
    void onlyPiecesWithOtherValuesAreIndexedAgain() {
        index.search(PieceQuery.EVERYTHING);
        drawers.asked.clear();
        drawers.put("V24-010", "lower");
        writeElsewhere("first");
        assertThat(numbers(index.search(PieceQuery.EVERYTHING.with(DRAWER, "lower"))))
                .containsExactlyInAnyOrder("V24-003", "V24-010");
        assertThat(drawers.asked).containsExactly("V24-010");
        writeElsewhere("second");
        index.search(PieceQuery.EVERYTHING);
        assertThat(drawers.asked).containsExactly("V24-010");
        assertThat(index.check(Progress.UNWATCHED)).isEmpty();
    }

    @Test
    void anIndexOfAnotherVersionIsMadeAnewAndOneOfTheSameIsKept() {
        index.search(PieceQuery.EVERYTHING);
        index.close();
        drawers.where.put("V24-010", "upper");
        drawers.asked.clear();
        index = PieceIndex.open(archive, drawers);
        index.search(PieceQuery.EVERYTHING);
        assertThat(drawers.asked).as("nothing was to be done").isEmpty();
        index.close();
        drawers.version = "2";
        index = PieceIndex.open(archive, drawers);
        assertThat(numbers(index.search(PieceQuery.EVERYTHING.with(DRAWER, "upper"))))
                .containsExactlyInAnyOrder("V24-001", "V24-002", "V24-010");
    }

    @Test
    void theCheckFindsAnEntryWithAValueThatItNoLongerHas() {
        index.search(PieceQuery.EVERYTHING);
        drawers.where.put("V24-010", "upper");
        assertThat(index.check(Progress.UNWATCHED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.toString()).contains("V24-010", "stale"));
    }

    @Test
    void searchesAnswerFromWhatThereIsWhileTheValuesTakeLongToFind() {
        index.search(PieceQuery.EVERYTHING);
        drawers.put("V24-010", "lower");
        CountDownLatch slow = new CountDownLatch(1);
        drawers.slow = slow;
        writeElsewhere("first");
        SearchResult meanwhile = index.search(PieceQuery.EVERYTHING.with(DRAWER, "lower"));
        assertThat(numbers(meanwhile)).containsExactly("V24-003");
        assertThat(meanwhile.behind()).isPositive();
        slow.countDown();
        assertThat(index.await(java.time.Duration.ofSeconds(20))).isTrue();
        assertThat(numbers(index.search(PieceQuery.EVERYTHING.with(DRAWER, "lower"))))
                .containsExactlyInAnyOrder("V24-003", "V24-010");
    }

    @Test
    void anErrorWhileIndexingIsShownAsBeingBehindAndTheNextWriteTriesAgain() {
        index.search(PieceQuery.EVERYTHING);
        for (Error error : List.of(new StackOverflowError("deep"), new OutOfMemoryError("Java heap space"))) {
            drawers.error = error;
            writeElsewhere("before " + error.getMessage());
            assertThat(index.search(PieceQuery.EVERYTHING).behind()).isPositive();
            drawers.error = null;
            writeElsewhere("after " + error.getMessage());
            assertThat(index.await(java.time.Duration.ofSeconds(20))).isTrue();
            assertThat(index.search(PieceQuery.EVERYTHING).behind()).isZero();
        }
    }

    @Test
    void whereTheValuesCannotBeFoundSearchesAnswerFromWhatThereIsAndTheNextWriteMendsIt() {
        index.search(PieceQuery.EVERYTHING);
        drawers.broken = true;
        drawers.put("V24-010", "lower");
        writeElsewhere("first");
        SearchResult stale = index.search(PieceQuery.EVERYTHING.with(DRAWER, "lower"));
        assertThat(numbers(stale)).containsExactly("V24-003");
        assertThat(stale.behind()).isPositive();
        drawers.broken = false;
        writeElsewhere("second");
        assertThat(numbers(index.search(PieceQuery.EVERYTHING.with(DRAWER, "lower"))))
                .containsExactlyInAnyOrder("V24-003", "V24-010");
    }
}
