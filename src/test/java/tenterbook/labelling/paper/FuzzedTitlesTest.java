package tenterbook.labelling.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.Samples;
import tenterbook.labelling.rule.Market;
import tenterbook.piece.Category;
import tenterbook.typeset.DoesNotFit;
import tenterbook.typeset.PdfDocument.Box;
import tenterbook.typeset.UnsupportedCharacter;

/** Whatever the title, a label carries it whole and inside its edges, or is refused with words that say why. */
class FuzzedTitlesTest {
    @Provide
    Arbitrary<String> titles() {
        Arbitrary<String> latin = Arbitraries.strings()
                .withChars("abcdefghij ABC éçõãñżłőū ß-–’“”·&,().123 ".toCharArray())
                .ofMinLength(1)
                .ofMaxLength(300);
        Arbitrary<String> words = Arbitraries.of("weir", "heron", "socalcos", "de", "板締め", "絞り", "kyōkechi", "B02", "—")
                .list()
                .ofMinSize(1)
                .ofMaxSize(40)
                .map(list -> String.join(" ", list));
        Arbitrary<String> mixed = Arbitraries.of(
                        "שלום", "سلام", "heron", "\uD83D\uDC26", "x\u0304", "a\u200Db", "藍", "ไทย")
                .list()
                .ofMinSize(1)
                .ofMaxSize(4)
                .map(list -> String.join(" ", list));
        return Arbitraries.oneOf(latin, words, words, mixed);
    }

    @Provide
    Arbitrary<PrintSettings> requests() {
        return Arbitraries.of(EveryLabelTest.everyFace()
                .filter(request -> request.kind() != LabelKind.CARE_LABEL)
                .collect(Collectors.toList()));
    }

    @Property(tries = 150)
    void aTitleIsSetWholeOrRefusedWithItsWords(
            @ForAll("titles") String title, @ForAll("requests") PrintSettings request) throws IOException {
        PieceFacts facts = Samples.facts(Samples.piece("V24-014", title, "", Category.SCARF, List.of()));
        Printed printed;
        try {
            printed = Printed.of(request, facts);
        } catch (DoesNotFit e) {
            assertThat(e.words()).isNotEmpty();
            assertThat(e).hasMessageContaining("V24-014").hasMessageContaining("Left over");
            return;
        } catch (UnsupportedCharacter e) {
            assertThat(e).hasMessageContaining("V24-014").hasMessageContaining("U+");
            return;
        }
        String wanted = LabelText.of(facts, request).of(LabelText.Part.TITLE).get(0);
        assertThat(plain(printed.text())).contains(plain(wanted));
        Box box = Sheet.of(request).boxes().get(0);
        assertThat(printed.letters(1))
                .filteredOn(letter -> letter.baseline() < box.y() + box.height() + 1)
                .allSatisfy(letter -> {
                    assertThat(letter.left()).isGreaterThan(box.x());
                    assertThat(letter.right()).isLessThan(box.x() + box.width());
                    assertThat(letter.baseline()).isBetween(box.y(), box.y() + box.height());
                });
    }

    /** Two extractions differ in blanks at the ends of lines, and nothing else. */
    private static String plain(String text) {
        return java.text.Normalizer.normalize(text, java.text.Normalizer.Form.NFC)
                .replaceAll("[\\s\u00a0\u00ad]", "");
    }

    @Property(tries = 25)
    void aLongTitleIsRefusedOnASmallLabelAndTheMessageNamesWhatIsLeftOver(@ForAll("titles") String title)
            throws IOException {
        PrintSettings small = PrintSettings.of(LabelKind.HANG_TAG, Market.EU).sized(45, 70);
        String endless = "weir " + title + " heron weir".repeat(40);
        PieceFacts facts = Samples.facts(Samples.piece("V24-014", endless, "", Category.SCARF, List.of()));
        try {
            Printed.of(small, facts);
            throw new AssertionError("a title of " + endless.length() + " characters was taken");
        } catch (DoesNotFit e) {
            assertThat(e.words())
                    .isNotEmpty()
                    .allSatisfy(word -> assertThat(word).isNotBlank());
        } catch (UnsupportedCharacter e) {
            assertThat(e).hasMessageContaining("U+");
        }
    }
}
