package tenterbook.piece.edition;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.words.Conventions;
import tenterbook.words.Language;
import tenterbook.words.Written;

/**
 * How places in editions are written: number over size, proofs counted apart and abbreviated 'AP', 'E.A.' or 'TP', with Arabic or Roman
 * numerals (common practice of printmaking, from memory).
 */
class EditionPlaceTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            nullValues = "-",
            value = {
                "2 of 9|COPY|2|9|-",
                "2/9|COPY|2|9|-",
                "No. 2 of an edition of 9|COPY|2|9|-",
                "nº 2 de 9|COPY|2|9|-",
                "2|COPY|2|-|-",
                "edition of 9|COPY|-|9|-",
                "2 of 9, state II|COPY|2|9|II",
                "estado iii, 4/12|COPY|4|12|III",
                "proof|PROOF|-|-|-",
                "Artist's proof 1 of 2|ARTISTS_PROOF|1|2|-",
                "artist’s proof|ARTISTS_PROOF|-|-|-",
                "AP I/II|ARTISTS_PROOF|1|2|-",
                "A.P. iv/ix|ARTISTS_PROOF|4|9|-",
                "1/2 AP|ARTISTS_PROOF|1|2|-",
                "prova de artista 2 de 3|ARTISTS_PROOF|2|3|-",
                "trial proof, state I|TRIAL_PROOF|-|-|I",
                "state proof, state IV|STATE_PROOF|-|-|IV",
                "3 of 5 in a set|OF_SET|3|5|-",
                "set 3/5|OF_SET|3|5|-",
                "3 of a set of 5|OF_SET|3|5|-",
                "3 de um conjunto de 5|OF_SET|3|5|-",
            })
    void aPlaceIsReadHoweverItIsWritten(String typed, EditionPart part, Integer number, Integer size, String state) {
        assertThat(EditionPlace.read(typed)).hasValue(new EditionPlace(part, number, size, state == null ? "" : state));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "one of a kind",
                "12 of 9",
                "0 of 9",
                "2 of many",
                "II of IX",
                "1 of 24 at 001",
                "set",
                "made of 9"
            })
    void whatIsNoPlaceIsNotGuessedAt(String typed) {
        assertThat(EditionPlace.read(typed)).isEmpty();
    }

    @Test
    void aPaperStatesThePlaceInItsOwnLanguageHoweverItWasTyped() {
        Conventions portuguese = Conventions.english().in(Language.PORTUGUESE);
        Written two = EditionPlace.read("No. 2/9, state II").orElseThrow().onPapers();
        assertThat(two.inEnglish()).isEqualTo("2 of 9, state II of the boards");
        assertThat(two.in(portuguese)).isEqualTo("2 de 9, estado II das tábuas");
        Written proof = EditionPlace.read("artist's proof 1 of 2").orElseThrow().onPapers();
        assertThat(proof.in(portuguese)).isEqualTo("prova de artista, número 1 de 2");
    }
}
