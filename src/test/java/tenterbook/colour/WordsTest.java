package tenterbook.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tenterbook.colour.space.ColourWords;
import tenterbook.colour.space.DifferenceWords;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.Srgb;

class WordsTest {
    /** The grounds of the sample archive's pieces, under the dye that made them. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "62, -7, -18 | light blue | woad, 2 dips",
                "48, -5, -24 | blue | woad, 4 dips",
                "34, -2, -25 | deep blue | woad, 9 dips",
                "56, -18, 12 | green | weld, then woad",
                "57, -19, 14 | green | weld, then woad",
                "51, -5, -19 | blue | woad, 6 dips",
                "41, -4, -26 | blue | woad, 6 dips on organza",
                "30, -1, -24 | deep blue | woad, 12 dips",
                "52, -5, -18 | blue | woad, 6 dips on lawn",
                "43, 39, 27 | red | madder on alum",
                "33, 20, 14 | dark red-brown | madder and iron",
                "46, 2, 10 | grey-brown | pomegranate rind and iron",
                "49, 16, 24 | warm brown | cutch",
                "44, -4, -21 | blue | woad, 10 dips on hemp",
                "48, -20, 11 | green | weld, then woad",
                "40, 9, 18 | brown | walnut hull",
                "31, 4, 9 | dark grey-brown | walnut hull and iron",
                "38, 38, 4 | crimson | lac",
                "43, 34, 6 | crimson | lac, another lot",
                "36, -3, -26 | blue | woad, dipped again",
            })
    void groundsOfTheSamplePiecesReadSensibly(String lab, String words, String dye) {
        assertThat(ColourWords.of(Lab.parse(lab))).as(dye).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({
        "#ffffff, white",
        "#000000, near black",
        "#f4efe2, off-white",
        "#808080, grey",
        "#e6e65a, vivid yellow",
        "#c8dc8c, pale yellow-green",
        "#d8c23c, vivid yellow",
        "#f0d0d4, pale pink",
        "#1a1c28, near black",
        "#d2782a, vivid orange",
        "#008c8c, blue-green",
        "#6e2a78, deep purple",
        "#c8b494, beige",
        "#5a5a28, olive",
    })
    void everydayColoursHaveTheirEverydayNames(String hex, String words) {
        assertThat(ColourWords.of(Srgb.parse(hex).lab())).isEqualTo(words);
    }

    @Property
    void everyScreenColourHasAShortName(
            @ForAll @IntRange(max = 255) int red,
            @ForAll @IntRange(max = 255) int green,
            @ForAll @IntRange(max = 255) int blue) {
        String words = ColourWords.of(new Srgb(red, green, blue).lab());
        assertThat(words).matches("[a-z]+([ -][a-z]+){0,3}");
    }

    @ParameterizedTest
    @CsvSource({
        "0, cannot be distinguished",
        "0.49, cannot be distinguished",
        "0.5, 'hardly noticeable, even side by side'",
        "1, just noticeable side by side",
        "2, noticeable at a glance side by side",
        "4, clearly two shades of one colour",
        "9.99, 'related, but plainly different'",
        "60, different colours"
    })
    void distancesHaveWords(double difference, String words) {
        assertThat(DifferenceWords.of(difference)).hasToString(words);
    }

    @Test
    void anImpossibleDistanceHasNoWords() {
        assertThatThrownBy(() -> DifferenceWords.of(-0.1)).hasMessageContaining("-0.1");
        assertThatThrownBy(() -> DifferenceWords.of(Double.NaN)).hasMessageContaining("NaN");
    }
}
