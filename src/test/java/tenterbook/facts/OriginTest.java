package tenterbook.facts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.Piece;
import tenterbook.piece.Studio;
import tenterbook.recipe.Clamping;

/** Where and by whom a piece was made is a fact of its day, not of the studio's present page. */
class OriginTest {
    private static final Studio MOVED = read(
            Kinds.STUDIO,
            "{'name': 'Oficina Valderim', 'maker': 'Inês Valderim', 'place': 'Vila Alta, Spain', 'dyedIn': 'Spain',"
                    + " 'numbers': 'V', 'currency': 'EUR', 'earlier': [{'until': "
                    + date("2025-03-01", "2025-03-01", "2025-03-01")
                    + ", 'name': 'Oficina Valderim', 'maker': 'Inês Valderim', 'place': 'Porto Sarelho, Portugal',"
                    + " 'dyedIn': 'Portugal'}]}");

    private static <T> T read(Kind<T> kind, String json) {
        return kind.codec().fromText(json.replace('\'', '"'));
    }

    private static String date(String entered, String from, String to) {
        return "{'entered': '%s', 'from': '%s', 'to': '%s'}".formatted(entered, from, to);
    }

    private static Clamping clamping(String id, String more) {
        return read(Kinds.CLAMPING, "{'id': '%s'%s}".formatted(id, more));
    }

    private static Piece piece(String more) {
        return read(Kinds.PIECE, "{'number': 'V24-001'" + more + "}");
    }

    @Test
    void aPieceOfBeforeTheMoveKeepsThePlaceOfItsDay() {
        Origin origin = Origin.of(
                MOVED,
                piece(""),
                List.of(clamping("C24-001", ", 'when': " + date("May 2024", "2024-05-01", "2024-05-31"))));
        assertThat(origin.dyedIn()).isEqualTo("Portugal");
        assertThat(origin.inFull()).isEqualTo("Inês Valderim, Oficina Valderim, Porto Sarelho, Portugal");
    }

    @Test
    void aPieceOfAfterTheMoveHasTheNewPlace() {
        Origin origin = Origin.of(
                MOVED,
                piece(""),
                List.of(clamping("C25-001", ", 'when': " + date("2025-03-01", "2025-03-01", "2025-03-01"))));
        assertThat(origin.dyedIn()).isEqualTo("Spain");
    }

    @Test
    void whereTheDayCannotTellWhatDifferedIsEmptyAndWhatDidNotStands() {
        for (String when : List.of("", ", 'when': " + date("2025", "2025-01-01", "2025-12-31"))) {
            Origin origin = Origin.of(MOVED, piece(""), List.of(clamping("C25-001", when)));
            assertThat(origin.dyedIn()).isEmpty();
            assertThat(origin.place()).isEmpty();
            assertThat(origin.maker()).isEqualTo("Inês Valderim");
        }
    }

    @Test
    void withoutAClampingTheDayItWasFinishedCounts() {
        Piece finished = piece(", 'finished': " + date("2019", "2019-01-01", "2019-12-31"));
        assertThat(Origin.of(MOVED, finished, List.of()).dyedIn()).isEqualTo("Portugal");
    }

    @Test
    void whatIsRecordedWithTheClampingAndThePieceStandsBeforeTheStudio() {
        Clamping elsewhere = clamping("C24-001", ", 'country': 'France', 'place': 'Rouvel', 'dyer': 'Tomé Arrais'");
        Origin origin = Origin.of(MOVED, piece(", 'maker': 'Rita Sol'"), List.of(elsewhere));
        assertThat(origin.dyedIn()).isEqualTo("France");
        assertThat(origin.place()).isEqualTo("Rouvel");
        assertThat(origin.maker()).isEqualTo("Rita Sol");
        assertThat(Origin.of(MOVED, piece(""), List.of(elsewhere)).maker()).isEqualTo("Tomé Arrais");
    }

    @Test
    void dyedInTwoCountriesNamesBothAndAnUnknownOneMakesItUnknown() {
        Clamping first = clamping("C24-001", ", 'country': 'Portugal'");
        assertThat(Origin.of(MOVED, piece(""), List.of(first, clamping("C25-002", ", 'country': 'Spain'")))
                        .dyedIn())
                .isEqualTo("Portugal and Spain");
        assertThat(Origin.of(MOVED, piece(""), List.of(first, clamping("C25-003", "")))
                        .dyedIn())
                .isEmpty();
    }
}
