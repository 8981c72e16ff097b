package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What a question was read as stands above its results, each part removable and turned back into words by a link. */
class QuestionPageTest {
    private static SampleStudio studio;

    @BeforeAll
    static void open() {
        studio = SampleStudio.readOnly();
    }

    private static String page(String address) throws IOException {
        Answer answer = new Client(studio.wiring().port()).get(address);
        assertThat(answer.status()).isEqualTo(200);
        return answer.text();
    }

    private static String asked(String question) throws IOException {
        return page("/?q=" + URLEncoder.encode(question, StandardCharsets.UTF_8));
    }

    private static List<String> numbers(String page) {
        List<String> numbers = new ArrayList<>();
        Matcher number = Pattern.compile("href=\"/pieces/(V24-\\d{3})\"").matcher(page);
        while (number.find()) {
            if (!numbers.contains(number.group(1))) {
                numbers.add(number.group(1));
            }
        }
        return numbers;
    }

    private static String link(String page, String label) {
        Matcher link = Pattern.compile("href=\"([^\"]+)\" aria-label=\"" + Pattern.quote(label) + "\"")
                .matcher(page);
        assertThat(link.find()).as("a link '%s'", label).isTrue();
        return link.group(1).replace("&amp;", "&");
    }

    @Test
    void eachPartOfAQuestionCanBeLeftOutOrTurnedBackIntoWords() throws IOException {
        String page = asked("linen six dips");
        assertThat(numbers(page)).containsExactly("V24-006");
        assertThat(page).contains("Fibre: linen", "Dips: 6");

        String withoutLinen = page(link(page, "Remove Fibre: linen"));
        assertThat(numbers(withoutLinen)).startsWith("V24-006").contains("V24-007");
        assertThat(withoutLinen).doesNotContain("Fibre: linen");

        String words = page(link(page, "Fibre: linen, as words"));
        assertThat(words).doesNotContain("aria-label=\"Remove Fibre: linen\"").contains("Dips: 6");
        assertThat(numbers(words)).contains("V24-006");
    }

    @Test
    void wordsThatNoPieceHasAreLeftOutWithALineThatNamesThem() throws IOException {
        String page = asked("woad heron zeppelin");
        assertThat(page).contains("No piece has this word too, so it was left out: zeppelin");
        assertThat(numbers(page)).contains("V24-004");
    }

    @Test
    void aFactIsNeverLeftOut() throws IOException {
        assertThat(numbers(asked("cochineal"))).isEmpty();
        assertThat(numbers(asked("V24-88"))).isEmpty();
    }

    @Test
    void anotherMeaningIsOfferedByALink() throws IOException {
        String page = asked("hanging");
        assertThat(numbers(page)).containsExactly("V24-007");
        Matcher link = Pattern.compile("<a href=\"([^\"]+)\">Kind of piece: wall hanging</a>")
                .matcher(page);
        assertThat(link.find()).isTrue();
        assertThat(numbers(page(link.group(1).replace("&amp;", "&")))).contains("V24-004", "V24-017");
    }

    @Test
    void aDeniedWordThatNoPieceHasIsNamed() throws IOException {
        assertThat(asked("silk never zeppelined"))
                .contains("Without the word ‘zeppelined’")
                .contains("No piece has the word ‘zeppelined’, so nothing was left out for it.")
                .doesNotContain("Without the word ‘zeppelined’, as words");
    }

    @Test
    void whatCannotBeLookedForIsSaid() throws IOException {
        assertThat(asked("?")).contains("No word was found in ‘?’ to look for, so nothing is narrowed by it.");
        assertThat(asked("鶴")).contains("Nothing is recorded with ‘鶴’.");
    }

    @Test
    void aMisspeltFactIsCorrectedOnlyWhereNothingIsFoundAsTyped() throws IOException {
        String page = asked("linnen six dips");
        assertThat(numbers(page)).containsExactly("V24-006");
        assertThat(page).contains("Nothing was found as typed; ‘linnen’ was read as ‘linen’.");
        assertThat(asked("linen six dips")).doesNotContain("was read as");
    }

    @Test
    void aStatusInQuotesIsFoundAsAWordInBothLanguages() throws IOException {
        assertThat(numbers(asked("\"sold\""))).containsExactlyInAnyOrder("V24-001", "V24-015");
        assertThat(numbers(asked("\"vendida\""))).containsExactlyInAnyOrder("V24-001", "V24-015");
    }

    @Test
    void sizesCurrenciesStepsAndWoodsAreComparedAsRecorded() throws IOException {
        assertThat(numbers(asked("square"))).containsExactlyInAnyOrder("V24-011", "V24-012");
        assertThat(numbers(asked("62 x 70")))
                .as("62 cm long and 70 cm wide")
                .containsExactlyInAnyOrder("V24-020", "V24-021", "V24-022", "V24-023");
        assertThat(numbers(asked("over 100 £"))).as("all prices are in EUR").isEmpty();
        assertThat(numbers(asked("over 500 €"))).contains("V24-013");
        assertThat(numbers(asked("3 hours"))).containsExactlyInAnyOrder("V24-004", "V24-005");
        assertThat(numbers(asked("pH 10.7"))).isNotEmpty();
        assertThat(numbers(asked("wool or lime wood or under 3 dips")))
                .contains("V24-010", "V24-012", "V24-001")
                .doesNotContain("V24-008");
        assertThat(numbers(asked("lime wood"))).containsExactlyInAnyOrder("V24-010", "V24-011", "V24-012");
    }
}
