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

        String withoutLinen = page(link(page, "Leave out Fibre: linen"));
        assertThat(numbers(withoutLinen)).startsWith("V24-006").contains("V24-007");
        assertThat(withoutLinen).doesNotContain("Fibre: linen");

        String words = page(link(page, "Fibre: linen, as words"));
        assertThat(words)
                .doesNotContain("aria-label=\"Leave out Fibre: linen\"")
                .contains("Dips: 6");
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
}
