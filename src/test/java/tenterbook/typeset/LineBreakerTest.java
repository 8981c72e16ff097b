package tenterbook.typeset;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.font.TextAttribute;
import java.io.InputStream;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class LineBreakerTest {
    private final Typefaces faces = Typefaces.open();
    private final LineBreaker setter = new LineBreaker(faces);

    @AfterEach
    void giveBack() {
        faces.close();
    }

    /** Reference: the JDK's own shaping with kerning (HarfBuzz), at 1000 points so that rounding to pixels does not count. */
    @ParameterizedTest
    @EnumSource(
            value = Typeface.class,
            names = {"TITLE", "TITLE_ITALIC", "TEXT", "TEXT_MEDIUM", "TEXT_BOLD"})
    void kerningAgreesWithAnIndependentShaper(Typeface face) throws Exception {
        for (String text : new String[] {"AVATAR", "To Ve, Wa", "Heron weir", "LT’Y", "Porto Sarelho, Portugal"}) {
            try (InputStream in = LineBreakerTest.class.getResourceAsStream(face.resource())) {
                Font font = Font.createFont(Font.TRUETYPE_FONT, in)
                        .deriveFont(1000f)
                        .deriveFont(Map.of(TextAttribute.KERNING, TextAttribute.KERNING_ON));
                var context = new FontRenderContext(null, true, true);
                double expected = font.layoutGlyphVector(
                                context, text.toCharArray(), 0, text.length(), Font.LAYOUT_LEFT_TO_RIGHT)
                        .getGlyphPosition(text.length())
                        .getX();
                double found =
                        setter.line(text, TextStyle.of(face, 1000, 1000, 1000)).width();
                assertThat(found).as(text).isCloseTo(expected, within(3.0));
                assertThat(unkerned(text, face)).as("without kerning, " + text).isNotCloseTo(found, within(3.0));
            }
        }
    }

    private double unkerned(String text, Typeface face) {
        Typefaces.Read read = faces.get(face);
        return text.chars().mapToDouble(c -> read.advance(read.glyph(c)) * 1000).sum();
    }

    @Test
    void macronsAndJapaneseAreSetEachInAFaceThatHoldsThem() {
        TextLine line = setter.line("kyōkechi 板締め絞り", TextStyle.of(Typeface.TITLE, 12, 15, 8));
        assertThat(line.runs()).extracting(TextLine.Run::face).containsExactly(Typeface.TITLE, Typeface.FALLBACK);
        assertThat(line.runs().get(1).width()).isCloseTo(5 * 12, within(0.01));
        assertThat(setter.line("kyo\u0304kechi", TextStyle.of(Typeface.TITLE, 12, 15, 8))
                        .text())
                .isEqualTo("kyōkechi");
    }

    @ParameterizedTest
    @ValueSource(strings = {"heron \uD83D\uDC26", "שלום", "سلام", "x\u0304", "a\u200Db", "\u202Eabc"})
    void whatCannotBeSetIsRefusedByName(String text) {
        assertThatThrownBy(() -> setter.line(text, TextStyle.of(Typeface.TITLE, 12, 15, 8)))
                .isInstanceOf(UnsupportedCharacter.class)
                .hasMessageContaining("U+");
    }

    @Test
    void aDegreeSignStaysWithItsLetter() {
        for (double wide = 12; wide < 40; wide += 0.5) {
            TextColumn column = new TextColumn(conventions -> "A test")
                    .add("Iron, at most 302\u00a0°F (150\u00a0°C).", TextStyle.of(Typeface.TEXT, 9, 11, 9), 0);
            assertThat(column.set(setter, wide, 40).lines())
                    .extracting(placed -> placed.line().text())
                    .noneMatch(text -> text.endsWith("°"));
        }
    }

    @Test
    void aNumberIsNotBrokenAtItsHyphen() {
        for (double wide = 16; wide < 50; wide += 0.5) {
            TextColumn column = new TextColumn(conventions -> "A test")
                    .add("Pieces V24-003 and V24-011, well-known.", TextStyle.of(Typeface.TEXT, 9, 11, 9), 0);
            assertThat(column.set(setter, wide, 60).lines())
                    .extracting(placed -> placed.line().text())
                    .noneMatch(text -> text.endsWith("V24-"));
        }
    }

    @Test
    void typeShrinksOnlyToItsSmallestAndThenTheWordsAreNamed() {
        TextStyle style = TextStyle.of(Typeface.TEXT, 12, 15, 9);
        TextColumn column = new TextColumn(conventions -> "A test").add("Four words set narrow", style, 0);
        TextColumn.SetColumn set = column.set(setter, 40, 10);
        assertThat(set.scale()).isEqualTo(1);
        TextColumn.SetColumn tight = column.set(setter, 22, 8.5);
        assertThat(tight.lines()).allSatisfy(p -> {
            assertThat(p.line().style().size()).isBetween(9.0, 11.9);
            assertThat(p.line().width()).isLessThanOrEqualTo(Mm.points(22));
        });
        assertThatThrownBy(() -> column.set(setter, 22, 4))
                .isInstanceOf(DoesNotFit.class)
                .hasMessageContaining("narrow");
        assertThatThrownBy(() -> new TextColumn(conventions -> "A test")
                        .add("Unbreakablewordofgreatlength", style, 0)
                        .set(setter, 10, 50))
                .isInstanceOf(DoesNotFit.class)
                .hasMessageContaining("Unbreakablewordofgreatlength");
    }

    @Test
    void smallCapitalsAreTheFontsOwnGlyphs() {
        assertThat(faces.get(Typeface.SMALL_CAPS).glyph('a'))
                .isNotEqualTo(faces.get(Typeface.TEXT_MEDIUM).glyph('a'));
        assertThat(faces.get(Typeface.SMALL_CAPS).glyph('A'))
                .isEqualTo(faces.get(Typeface.TEXT_MEDIUM).glyph('A'));
    }

    @Test
    void titlesAreBrokenIntoEvenLines() {
        TextStyle title = TextStyle.of(Typeface.TITLE, 18, 21, 18).even();
        var lines = setter.wrapped("Heron weir, second cutting", title, Mm.points(48))
                .orElseThrow();
        assertThat(lines).hasSize(2);
        assertThat(lines.get(0).text()).isEqualTo("Heron weir,");
    }
}
