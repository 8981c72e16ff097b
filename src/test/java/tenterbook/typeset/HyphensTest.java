package tenterbook.typeset;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class HyphensTest {
    private final Typefaces faces = Typefaces.open();
    private final LineBreaker setter = new LineBreaker(faces);

    @AfterEach
    void giveBack() {
        faces.close();
    }

    /** As TeX breaks them with its English patterns (from memory, after The TeXbook, appendix H, and Liang's thesis). */
    @ParameterizedTest
    @CsvSource({
        "hyphenation, hy-phen-ation",
        "concatenation, con-cate-na-tion",
        "computer, com-puter",
        "algorithm, al-go-rithm",
        "supercalifragilisticexpialidocious, su-per-cal-ifrag-ilis-tic-ex-pi-ali-do-cious"
    })
    void englishWordsAreBrokenAsTexBreaksThem(String word, String broken) {
        StringBuilder found = new StringBuilder();
        int from = 0;
        for (int at : Hyphens.of(word)) {
            found.append(word, from, at).append('-');
            from = at;
        }
        assertThat(found.append(word.substring(from))).hasToString(broken);
    }

    /** As the rules of the Acordo Ortográfico of 1990, Base XX, divide them (from memory), never between two vowels. */
    @ParameterizedTest
    @CsvSource({
        "fotografia, fo-to-gra-fia",
        "trabalho, tra-ba-lho",
        "conservação, con-ser-va-ção",
        "carregar, car-re-gar",
        "inseparável, in-se-pa-rá-vel",
        "qualquer, qual-quer",
        "transporte, trans-porte",
        "sublinhar, subli-nhar"
    })
    void portugueseWordsAreBrokenBetweenTheirSyllables(String word, String broken) {
        StringBuilder found = new StringBuilder(word);
        int[] places = PortugueseHyphens.of(word);
        for (int i = places.length - 1; i >= 0; i--) {
            found.insert(places[i], '-');
        }
        assertThat(found).hasToString(broken);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Valderim", "amendoeira3", "weir", "板締め絞りです", "naïveté"})
    void namesShortWordsAndOtherScriptsAreLeftWhole(String word) {
        assertThat(Hyphens.of(word)).isEmpty();
    }

    @Test
    void onlyRunningTextIsHyphenatedAndTheLineSaysSo() {
        TextStyle plain = TextStyle.of(Typeface.TEXT, 10, 12, 10);
        String text = "dyed concatenation";
        double narrow = setter.line("dyed concate-", plain).width() + 0.5;
        assertThat(setter.wrapped(text, plain.running(), narrow).orElseThrow())
                .extracting(TextLine::text)
                .containsExactly("dyed concate\u00ad", "nation");
        double word = setter.line("concatenation", plain).width() + 0.5;
        assertThat(setter.wrapped(text, plain, word).orElseThrow())
                .extracting(TextLine::text)
                .containsExactly("dyed", "concatenation");
        assertThat(setter.wrapped(text, plain, word * 0.7)).isEmpty();
        assertThat(setter.wrapped(text, plain.running(), word * 0.7)).isPresent();
    }

    @Test
    void aHyphenatedLineIsNeverWiderThanItsMeasure() {
        TextStyle style = TextStyle.of(Typeface.TEXT, 7.2, 9, 6).running();
        String text =
                "Clamp-resist dyed by hand between carved boards, folded in eight layers; aluminium acetate mordant and"
                        + " pomegranate, afterwards neutralised and thoroughly rinsed.";
        for (double width = 40; width < 200; width += 3) {
            double most = width;
            setter.wrapped(text, style, width)
                    .ifPresent(lines -> assertThat(lines)
                            .allSatisfy(line -> assertThat(line.width()).isLessThanOrEqualTo(most + 1e-6)));
        }
    }
}
