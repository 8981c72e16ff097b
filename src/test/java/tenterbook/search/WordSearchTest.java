package tenterbook.search;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.search.Demo.find;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Archive;
import tenterbook.search.find.Hit;
import tenterbook.search.find.SearchResult;
import tenterbook.search.query.PieceQuery;
import tenterbook.search.suggest.Suggestion;

class WordSearchTest {
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

    @ParameterizedTest
    @ValueSource(
            strings = {"kyokechi", "kyōkechi", "KYŌKECHI", "ｋｙｏｋｅｃｈｉ", "maré", "mare baixa", "板締め", "締め絞り", "板", "板締め絞り"
            })
    void accentsMacronsWidthAndScriptDoNotMatter(String typed) {
        assertThat(find(index, typed)).first().isEqualTo("V24-001");
    }

    @Test
    void aJapaneseWordThatIsNotThereIsNotFound() {
        assertThat(find(index, "締板")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"V24-010", "v24-010", "v24 010", "010", "V24010", "24-10", "v24 10"})
    void aNumberIsFoundHoweverItIsWritten(String typed) {
        assertThat(find(index, typed)).first().isEqualTo("V24-010");
    }

    @Test
    void aWholeNumberFindsThatPieceAlone() {
        assertThat(find(index, "V24-010")).containsExactly("V24-010");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "beak leak",
                "sycamore weld",
                "Reseda luteola",
                "seal the beak",
                "heron lin",
                "harvest-9 sycamore",
                "bolt-77 heron",
                "rain screws weir",
                "mare sycamore seal"
            })
    void everyPartOfTheRecordIsSearched(String typed) {
        assertThat(find(index, typed)).contains("V24-003").doesNotContain("V24-001", "V24-002", "V24-010");
    }

    @Test
    void holderAndPlaceAreSearchedButNoContact() {
        assertThat(find(index, "vermia")).containsExactly("V24-002");
        assertThat(find(index, "sarelho")).containsExactly("V24-002");
        assertThat(find(index, "secret street")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"heron wier", "sycamoor", "nien swifts", "bleeed", "swfits"})
    void aWrongLetterIsForgivenAndSaid(String typed) {
        SearchResult result = index.search(PieceQuery.EVERYTHING.withText(typed));
        assertThat(result.total()).isPositive();
        assertThat(result.respelt()).isTrue();
    }

    @Test
    void theWordAsTypedIsNotMixedWithSimilarOnes() {
        SearchResult result = index.search(PieceQuery.EVERYTHING.withText("weld"));
        assertThat(result.respelt()).isFalse();
        assertThat(Demo.numbers(result)).containsExactlyInAnyOrder("V24-003", "V24-004");
    }

    @Test
    void aPhraseIsFoundOnlyInOrder() {
        assertThat(find(index, "\"the beak before\"")).containsExactly("V24-003");
        assertThat(find(index, "\"before the beak\"")).isEmpty();
        assertThat(find(index, "“the beak before")).containsExactly("V24-003");
    }

    @Test
    void aMinusLeavesOut() {
        assertThat(find(index, "sycamore -leak")).containsExactly("V24-004");
        assertThat(find(index, "-sycamore")).containsExactlyInAnyOrder("V24-001", "V24-002", "V24-010");
        assertThat(find(index, "sycamore -\"the beak before\"")).containsExactly("V24-004");
    }

    @Test
    void theReasonShowsTheRecordsOwnWords() {
        SearchResult result = index.search(PieceQuery.EVERYTHING.withText("lesson beak seal"));
        assertThat(result.leftOut()).containsExactly("lesson");
        Hit hit = index.search(PieceQuery.EVERYTHING.withText("seal")).hits().get(0);
        assertThat(hit.why()).containsExactly("lesson: seal the beak before the vat");
    }

    @Test
    void everyPieceFoundIsShownOnceWhateverItsWeight() {
        for (String typed : List.of(
                "-hornet", "-leak", "w", "v", "heron w", "silk -leak", "\"heron weir\" s", "herno wier", "V24")) {
            SearchResult result = index.search(PieceQuery.EVERYTHING.withText(typed));
            assertThat(result.total()).as(typed).isPositive();
            assertThat(Demo.numbers(result))
                    .as(typed)
                    .hasSize((int) result.total())
                    .doesNotHaveDuplicates();
            List<String> paged = new java.util.ArrayList<>();
            for (int page = 1; page <= result.total(); page++) {
                PieceQuery one = result.query().withSize(1).withPage(page);
                paged.addAll(Demo.numbers(index.search(one)));
            }
            assertThat(paged).as(typed).isEqualTo(Demo.numbers(result));
        }
    }

    @Test
    void noInputIsAnError() {
        String signs = "\"-()*:~^?\\/[]{}!&|+ ab板ー’“\u0000\ud83d\ude00\ud83d\t\n";
        Random random = new Random(7);
        for (int i = 0; i < 800; i++) {
            StringBuilder typed = new StringBuilder();
            int length = random.nextInt(12);
            for (int j = 0; j < length; j++) {
                typed.append(signs.charAt(random.nextInt(signs.length())));
            }
            PieceQuery query = PieceQuery.EVERYTHING.withText(typed.toString());
            assertThat(index.search(query).total()).as(typed.toString()).isBetween(0L, 5L);
            assertThat(index.suggest(typed.toString(), 8)).as(typed.toString()).hasSizeLessThanOrEqualTo(8);
        }
    }

    @Test
    void suggestionsComeFromAnyWordWithoutAccentsAndWithATypo() {
        assertThat(index.suggest("wei", 8)).extracting(Suggestion::kind).contains("board", "title");
        assertThat(index.suggest("mare b", 8)).extracting(Suggestion::text).containsExactly("Maré baixa");
        assertThat(index.suggest("hreon", 8)).extracting(Suggestion::text).contains("B02 Heron weir");
        assertThat(index.suggest("b02", 8)).first().isEqualTo(new Suggestion("board", "B02 Heron weir", "B02", 2));
        assertThat(index.suggest("v24 003", 8)).extracting(Suggestion::value).contains("V24-003");
        assertThat(index.suggest("weld", 8)).contains(new Suggestion("dye", "weld", "weld", 2));
        assertThat(index.suggest("ble", 8)).contains(new Suggestion("fault", "Bleed", "bleed", 1));
        assertThat(index.suggest("porto", 8)).contains(new Suggestion("place", "Porto Sarelho", "Porto Sarelho", 1));
        assertThat(index.suggest("zzz", 8)).isEmpty();
    }
}
