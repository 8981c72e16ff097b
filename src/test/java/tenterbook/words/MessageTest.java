package tenterbook.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.MissingResourceException;
import org.junit.jupiter.api.Test;

class MessageTest {
    private static final Conventions PORTUGUESE =
            new Conventions(Locale.forLanguageTag("pt"), ',', Conventions.DateOrder.DAY_FIRST, ZoneOffset.UTC);

    @Test
    void aTextWithoutArgumentsIsWrittenAsItStands() {
        assertThat(Message.of("example.plain")).hasToString("It isn’t \"quoted\", nor 'quoted'.");
    }

    @Test
    void theNumberOfThingsChoosesTheForm() {
        assertThat(Message.of("example.found", "count", 0, "place", "Porto"))
                .hasToString("No piece was found in Porto.");
        assertThat(Message.of("example.found", "count", 1, "place", "Porto"))
                .hasToString("1 piece was found in Porto.");
    }

    /** '1,200' is refused when it is typed, for it can be read as two numbers; so it is not written either. */
    @Test
    void aNumberHasNoGroupingMarks() {
        assertThat(Message.of("example.found", "count", 1200, "place", 1200))
                .hasToString("1200 pieces were found in 1200.");
    }

    @Test
    void aMessageIsWrittenInTheLanguageOfItsReaderAndInEnglishWhereItIsNotTranslated() {
        assertThat(Message.of("example.found", "count", 2, "place", "Porto").in(PORTUGUESE))
                .isEqualTo("2 peças foram encontradas em Porto.");
        assertThat(Message.of("example.plain").in(PORTUGUESE)).startsWith("It isn’t");
    }

    @Test
    void anArgumentIsWrittenInTheSameLanguage() {
        Message inner = Message.of("example.found", "count", 1, "place", "Porto");
        assertThat(Message.of("example.said", "why", inner).in(PORTUGUESE))
                .isEqualTo("It was not read: 1 peça foi encontrada em Porto.");
    }

    @Test
    void aForgottenArgumentIsAnError() {
        assertThatThrownBy(() -> Message.of("example.size").inEnglish())
                .hasMessageContaining("needs an argument length");
        assertThatThrownBy(() -> Message.of("example.nowhere").inEnglish())
                .isInstanceOf(MissingResourceException.class);
    }

    @Test
    void aRefusalSaysTheSameInEnglishAsAnyException() {
        Refusal refusal = Refusal.of("example.found", "count", 3, "place", "Porto");
        assertThat(refusal).hasMessage("3 pieces were found in Porto.");
        assertThat(refusal.explanation().in(PORTUGUESE)).isEqualTo("3 peças foram encontradas em Porto.");
    }

    @Test
    void severalThingsAreListedAsTheLanguageHasIt() {
        assertThat(Listing.and(List.of("a", "b", "c")).inEnglish()).isEqualTo("a, b and c");
        assertThat(Listing.or(List.of("a", "b")).inEnglish()).isEqualTo("a or b");
        assertThat(Listing.and(List.of("a", "b", "c")).in(PORTUGUESE)).isEqualTo("a, b e c");
    }
}
