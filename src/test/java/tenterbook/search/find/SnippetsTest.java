package tenterbook.search.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.search.index.PieceTexts.Passage;
import tenterbook.search.query.UserText;

/** The passages shown with a piece hold what was asked. */
class SnippetsTest {
    private static List<String> shown(String typed, Passage... passages) {
        return new Snippets(UserText.read(typed), false).of(List.of(passages));
    }

    @Test
    void aPhraseIsShownWhereItStandsAsOne() {
        assertThat(shown(
                        "\"seal the beak\"",
                        new Passage("notes", "the beak first, then the seal"),
                        new Passage("lesson", "seal the beak before the vat")))
                .containsExactly("lesson: seal the beak before the vat");
    }

    @Test
    void aJapaneseWordIsShownWhereItStandsWhole() {
        assertThat(shown("板締め ", new Passage("notes", "板締 と 締め"), new Passage("title", "板締め絞り")))
                .containsExactly("title: 板締め絞り");
    }

    @Test
    void aNumberIsShownWhereItStandsWhole() {
        assertThat(shown("V24-001 ", new Passage("edition", "1 of 24 at 001"))).isEmpty();
        assertThat(shown("V24-001 ", new Passage("notes", "cut with V24-001"))).hasSize(1);
    }

    @Test
    void aWordIsShownInItsOtherFormsAndTheLastOneByItsBeginning() {
        assertThat(shown("leaked ", new Passage("fault", "a leak at the beak"))).hasSize(1);
        assertThat(shown("hero", new Passage("board", "Heron weir"))).hasSize(1);
        assertThat(shown("hero ", new Passage("board", "Heron weir"))).isEmpty();
    }
}
