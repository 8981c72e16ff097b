package tenterbook.search;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.search.Demo.counts;
import static tenterbook.search.Demo.numbers;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.piece.Fault;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.Status;
import tenterbook.search.facet.FacetCount;
import tenterbook.search.find.SearchResult;
import tenterbook.search.index.PieceCard;
import tenterbook.search.query.Days;
import tenterbook.search.query.Facet;
import tenterbook.search.query.Order;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.query.Span;

class FacetSearchTest {
    @TempDir
    static Path folder;

    static Archive archive;
    static PieceIndex index;

    @BeforeAll
    static void open() {
        archive = Demo.archive(folder);
        Demo.fill(archive);
        index = PieceIndex.open(archive);
    }

    @AfterAll
    static void close() {
        index.close();
        archive.close();
    }

    @Test
    void choosingABoardStillShowsTheOthers() {
        SearchResult result = index.search(PieceQuery.EVERYTHING.with(Facet.BOARD, "B01"));
        assertThat(numbers(result)).containsExactlyInAnyOrder("V24-001", "V24-002");
        assertThat(counts(result, Facet.BOARD))
                .containsAllEntriesOf(Map.of("B01", 2, "B02", 2, "B02/I", 1, "B02/II", 1, "B03", 1));
        assertThat(counts(result, Facet.CLOTH)).isEqualTo(Map.of("SH", 2));
        FacetCount chosen = result.facets().get(0).counts().stream()
                .filter(FacetCount::chosen)
                .findFirst()
                .orElseThrow();
        assertThat(chosen).isEqualTo(new FacetCount("B01", "B01 Fig and wasp", 2, true));
    }

    @Test
    void twoFacetsTogetherCountSideways() {
        SearchResult result =
                index.search(PieceQuery.EVERYTHING.with(Facet.CLOTH, "SH").with(Facet.STATUS, "in stock"));
        assertThat(numbers(result)).containsExactly("V24-010");
        assertThat(counts(result, Facet.STATUS)).isEqualTo(Map.of("in-stock", 1, "sold", 1, "consigned", 1));
        assertThat(counts(result, Facet.CLOTH)).isEqualTo(Map.of("SH", 1, "LV", 1));
    }

    @Test
    void aStateOfABoardNarrowsFurtherAndValuesOfOneFacetAdd() {
        assertThat(numbers(index.search(PieceQuery.EVERYTHING.with(Facet.BOARD, "B02/II"))))
                .containsExactly("V24-004");
        assertThat(numbers(index.search(
                        PieceQuery.EVERYTHING.with(Facet.BOARD, "B02/II").with(Facet.BOARD, "b03"))))
                .containsExactly("V24-004", "V24-010");
    }

    @Test
    void aKindOfFaultCountsOncePerPieceHoweverItIsWritten(@TempDir Path alone) {
        Fault[] faults = {new Fault("Leak", "edge", ""), new Fault("leak", "beak", ""), new Fault("LEAK ", "", "")};
        try (Archive one = Demo.archive(alone)) {
            Demo.save(one, Kinds.PIECE, Demo.piece("V24-001", "Weir", null, Status.KEPT, "2024", faults));
            Demo.save(one, Kinds.PIECE, Demo.piece("V24-002", "Sluice", null, Status.KEPT, "2024", faults[1]));
            try (PieceIndex its = PieceIndex.open(one)) {
                SearchResult result = its.search(PieceQuery.EVERYTHING.with(Facet.FAULT, "LEAK"));
                assertThat(numbers(result)).containsExactlyInAnyOrder("V24-001", "V24-002");
                assertThat(counts(result, Facet.FAULT)).isEqualTo(Map.of("leak", 2));
                assertThat(result.hits())
                        .extracting(hit -> hit.card().faults().size())
                        .containsExactly(1, 1);
                assertThat(its.suggest("lea", 9)).hasSizeLessThanOrEqualTo(2);
            }
        }
    }

    @Test
    void everyFacetFinds() {
        assertThat(one(Facet.FIBRE, "Linen")).containsExactlyInAnyOrder("V24-003", "V24-004");
        assertThat(one(Facet.DYE, "weld")).containsExactlyInAnyOrder("V24-003", "V24-004");
        assertThat(one(Facet.MORDANT, "aluminium acetate")).containsExactly("V24-003");
        assertThat(one(Facet.HOLDER, "sala-vermia")).containsExactly("V24-002");
        assertThat(one(Facet.YEAR, "2024")).containsExactly("V24-010", "V24-002", "V24-001");
        assertThat(one(Facet.FAULT, "bleed")).containsExactly("V24-004");
        assertThat(one(Facet.CATEGORY, "scarf")).hasSize(5);
        assertThat(one(Facet.CLOTH, "nothing of the kind")).isEmpty();
    }

    private static java.util.List<String> one(Facet facet, String value) {
        return numbers(index.search(PieceQuery.EVERYTHING.with(facet, value)));
    }

    @Test
    void aRangeOfDipsMatchesWhatItMayBeAndNeverTheUnknown() {
        assertThat(numbers(index.search(PieceQuery.EVERYTHING.withDips(Span.read("7")))))
                .containsExactly("V24-002");
        assertThat(numbers(index.search(
                        PieceQuery.EVERYTHING.withDips(Span.read("0..")).withSort(Order.DIPS))))
                .containsExactly("V24-001", "V24-003", "V24-002");
        assertThat(numbers(index.search(PieceQuery.EVERYTHING.withDips(Span.read("..2")))))
                .containsExactly("V24-001");
    }

    @Test
    void sizesPricesAndDaysNarrow() {
        PieceQuery all = PieceQuery.EVERYTHING;
        assertThat(index.search(all.withLengthCm(Span.read("180"))).total()).isEqualTo(5);
        assertThat(index.search(all.withWidthCm(Span.read("46..50"))).total()).isZero();
        assertThat(index.search(all.withPrice(Span.read("100..180"))).total()).isEqualTo(5);
        assertThat(numbers(index.search(all.withFinished(Days.read("2024-01..2024-02")))))
                .containsExactly("V24-002", "V24-001");
        assertThat(numbers(index.search(all.withFinished(Days.read("2023-06-15")))))
                .containsExactly("V24-003");
    }

    @Test
    void theUndatedStandByTheDayTheyWereRecordedAndTheUntitledLast() {
        assertThat(numbers(index.search(PieceQuery.EVERYTHING)))
                .containsExactly("V24-004", "V24-010", "V24-002", "V24-001", "V24-003");
        assertThat(numbers(index.search(PieceQuery.EVERYTHING.withSort(Order.OLDEST))))
                .containsExactly("V24-003", "V24-001", "V24-002", "V24-010", "V24-004");
        assertThat(numbers(index.search(PieceQuery.EVERYTHING.withSort(Order.TITLE))))
                .containsExactly("V24-004", "V24-002", "V24-003", "V24-001", "V24-010");
    }

    @Test
    void whatIsNotRecordedIsCountedAndFoundAsNotSaid(@TempDir Path alone) {
        Piece bare = new Piece(
                new PieceNumber("V24-001"),
                "Maré",
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
        try (Archive one = Demo.archive(alone)) {
            one.ledger().write("test", act -> act.create(Kinds.PIECE, bare));
            try (PieceIndex its = PieceIndex.open(one)) {
                for (Facet facet : new Facet[] {Facet.CATEGORY, Facet.STATUS}) {
                    SearchResult result = its.search(PieceQuery.EVERYTHING.with(facet, "not said"));
                    assertThat(numbers(result)).containsExactly("V24-001");
                    assertThat(result.facets().stream()
                                    .flatMap(group -> group.counts().stream())
                                    .filter(FacetCount::chosen))
                            .containsExactly(new FacetCount("not-said", "not recorded", 1, true));
                    assertThat(result.hits().get(0).card().category()).isNull();
                    assertThat(result.hits().get(0).card().status()).isNull();
                }
            }
        }
    }

    @Test
    void pagesFollowOnEachOther() {
        PieceQuery two = PieceQuery.EVERYTHING.withSort(Order.NUMBER).withSize(2);
        assertThat(numbers(index.search(two))).containsExactly("V24-001", "V24-002");
        assertThat(numbers(index.search(two.withPage(3)))).containsExactly("V24-010");
        assertThat(numbers(index.search(two.withPage(400)))).isEmpty();
        assertThat(index.search(two.withPage(400)).total()).isEqualTo(5);
    }

    @Test
    void theCardHoldsWhatAListShows() {
        PieceCard card = index.byBoard("B02").get(0);
        assertThat(index.byBoard("B02")).extracting(PieceCard::number).containsExactly("V24-003", "V24-004");
        assertThat(card.boards()).containsExactly(new PieceCard.Board("B02", "B02 Heron weir", "I"));
        assertThat(card.size()).isEqualTo("180 cm × 45 cm");
        assertThat(card.dips()).isEqualTo("3");
        assertThat(card.cloths()).containsExactly("LV linen voile");
        assertThat(card.faults()).containsExactly("leak");
        assertThat(card.year()).isEqualTo(2023);
        assertThat(card.photo()).isNull();
    }
}
