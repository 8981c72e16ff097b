package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.ledger.People.Opened;
import tenterbook.ledger.beside.SavedSearches;
import tenterbook.ledger.beside.SavedSearches.SavedSearch;
import tenterbook.words.Refusal;

/** Searches kept under a name, beside the ledger. */
class SavedSearchesTest {
    @TempDir
    Path root;

    private Opened opened;
    private SavedSearches searches;

    @BeforeEach
    void open() {
        opened = new Opened(root);
        searches = opened.ledger.savedSearches();
    }

    @AfterEach
    void close() {
        opened.close();
    }

    @Test
    void theyAreKeptByNameAndAreNoPartOfTheChain() {
        long before = opened.ledger.lastSequence();
        searches.save("woad on linen", "q=woad+linen", false);
        searches.save("  Blue   and large ", "length=100..", false);

        assertThat(searches.all())
                .extracting(SavedSearch::name, SavedSearch::question)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("Blue and large", "length=100.."),
                        org.assertj.core.groups.Tuple.tuple("woad on linen", "q=woad+linen"));
        assertThat(opened.ledger.lastSequence()).isEqualTo(before);
    }

    @Test
    void aNameIsUsedOnceAndIsReplacedOnlyWhenAskedFor() {
        SavedSearch first = searches.save("woad", "q=woad", false);
        assertThatThrownBy(() -> searches.save("woad", "q=woad&view=table", false))
                .isInstanceOf(SavedSearches.NameTaken.class)
                .hasMessageContaining("“woad” is saved already");
        assertThat(searches.all()).extracting(SavedSearch::question).containsExactly("q=woad");

        assertThat(searches.save("woad", "q=woad&view=table", true).id()).isEqualTo(first.id());
        assertThat(searches.all()).extracting(SavedSearch::question).containsExactly("q=woad&view=table");
    }

    @Test
    void oneIsRenamedButNotToTheNameOfAnother() {
        long woad = searches.save("woad", "q=woad", false).id();
        searches.save("weld", "q=weld", false);
        assertThat(searches.rename(woad, "woad blue")).map(SavedSearch::name).contains("woad blue");
        assertThatThrownBy(() -> searches.rename(woad, "weld")).isInstanceOf(SavedSearches.NameTaken.class);
        assertThatThrownBy(() -> searches.rename(woad, " ")).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> searches.rename(woad, "x".repeat(101))).hasMessageContaining("at most 100");
        assertThat(searches.rename(99, "nothing")).isEmpty();
    }

    @Test
    void theLastOneRemovedCanBeBroughtBack() {
        long woad = searches.save("woad", "q=woad", false).id();
        long weld = searches.save("weld", "q=weld", false).id();
        searches.remove(woad);
        searches.remove(weld);
        assertThat(searches.all()).isEmpty();
        assertThat(searches.removed()).map(SavedSearch::id).contains(weld);

        assertThat(searches.bringBack(woad)).isEmpty();
        assertThat(searches.bringBack(weld)).map(SavedSearch::question).contains("q=weld");
        assertThat(searches.all()).extracting(SavedSearch::id).containsExactly(weld);
        assertThat(searches.removed()).isEmpty();
    }

    @Test
    void aRemovedOneWaitsWhereItsNameIsTakenMeanwhile() {
        long first = searches.save("woad", "q=woad", false).id();
        searches.remove(first);
        searches.save("woad", "q=woad+wool", false);
        assertThatThrownBy(() -> searches.bringBack(first)).isInstanceOf(SavedSearches.NameTaken.class);
        assertThat(searches.removed()).map(SavedSearch::id).contains(first);
    }

    @Test
    void anIdIsNeverGivenAgain() {
        long first = searches.save("woad", "q=woad", false).id();
        searches.remove(first);
        searches.remove(searches.save("weld", "q=weld", false).id());
        assertThat(searches.save("madder", "q=madder", false).id()).isGreaterThan(first + 1);
    }

    @Test
    void moreThanCanBeLookedThroughAreRefused() {
        for (int i = 0; i < SavedSearches.MOST; i++) {
            searches.save("search " + i, "q=" + i, false);
        }
        assertThatThrownBy(() -> searches.save("one more", "q=x", false)).hasMessageContaining("200");
        assertThat(searches.save("search 7", "q=seven", true).question()).isEqualTo("q=seven");
    }

    @Test
    void anErasureDeletesThoseThatNameThePerson() {
        opened.ledger.write("Inês", act -> act.create(People.PERSON, People.BUYER));
        searches.save("sold to Brites Almorena", "status=sold", false);
        searches.save("at the buyer", "holder=buyer-1", false);
        searches.save("by words", "q=Brites+Almorena", false);
        searches.remove(
                searches.save("gone already", "holder=buyer-1&q=x", false).id());
        searches.save("another", "holder=buyer-12", false);

        assertThat(opened.ledger
                        .erase("Inês", People.PERSON, "buyer-1", "asked for")
                        .searches())
                .isEqualTo(4);
        assertThat(searches.all()).extracting(SavedSearch::name).containsExactly("another");
        assertThat(searches.removed()).isEmpty();
    }
}
