package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.piece.CareTest;
import tenterbook.piece.Specimen;
import tenterbook.piece.TestStandard;

/** Care tests from the form to the label: what is entered, what is printed of it, and what is only asked. */
class CareTestsTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
    }

    private static String[] piece(String... more) {
        List<String> fields = new ArrayList<>(
                List.of("number", "V24-001", "title", "Figueira", "category", "scarf", "made.0.clamping", "C24-001"));
        fields.addAll(List.of(more));
        return fields.toArray(String[]::new);
    }

    private static final String[] WASHED = {
        "tests.0.kind", "hand wash",
        "tests.0.standard", "own method",
        "tests.0.method", "10 min, neutral soap",
        "tests.0.temperature", "40 °C",
        "tests.0.grade", "4-5",
        "tests.0.specimen", "a strip dyed with it",
        "tests.0.passed", "yes"
    };

    @Test
    void aTestIsKeptWithItsStandardGradeAndSpecimenAndShown() throws IOException {
        saved("/pieces", piece(WASHED));
        CareTest test = wiring.archive().piece("V24-001").orElseThrow().tests().get(0);
        assertThat(test.standard()).isEqualTo(TestStandard.OWN);
        assertThat(test.grade()).isEqualTo(4.5);
        assertThat(test.specimen()).isEqualTo(Specimen.STRIP);
        assertThat(client.get("/pieces/V24-001").words())
                .contains("own method, 10 min, neutral soap, on a strip dyed with it")
                .contains("grade 4-5");
        assertThat(client.get("/pieces/V24-001/edit").text()).contains("value=\"4-5\"");
    }

    @Test
    void aGradeThatIsNoneIsSentBackWithAllThatWasTyped() throws IOException {
        Answer answer =
                client.post("/pieces", piece("tests.0.kind", "rub", "tests.0.grade", "8", "tests.0.result", "pink"));
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.text()).contains("no grade of the grey scale");
        assertThat(wiring.archive().piece("V24-001")).isEmpty();
    }

    @Test
    void whereNoSymbolCanBeDrawnThePageSaysWhyForEachRow() throws IOException {
        saved(
                "/pieces",
                piece(
                        "tests.0.kind",
                        "dry clean",
                        "tests.0.when",
                        "2024-04-02",
                        "tests.0.method",
                        "at the shop",
                        "tests.0.result",
                        "no change",
                        "tests.0.passed",
                        "yes"));
        String address = "/print?pieces=V24-001&kind=care-label&market=us";
        assertThat(client.get(address).words()).doesNotContain("No symbol can be drawn");
        assertThat(client.get(address + "&symbols=1").words())
                .contains("No symbol can be drawn from the tests on record")
                .contains("bleaching: no fitting test")
                .contains("professional care: the test's solvent, perchloroethylene or hydrocarbon, is not recorded");
        assertThat(client.get("/pieces/V24-001/edit").words())
                .contains("for dry cleaning name the solvent, as in perchloroethylene");
    }

    @Test
    void symbolsAreChosenBesideTheirCautionAndKeptWithTheirEvidence() throws IOException {
        saved("/pieces", piece(WASHED));
        Answer page = client.get("/print?pieces=V24-001&kind=care-label&market=eu&symbols=1");
        assertThat(page.words())
                .contains("registered trademarks", "needs a licence")
                .contains("May the row of symbols go out with gaps?")
                .contains("symbol: wash by hand, at most 40 °C [hand wash test at 40 °C on a strip dyed with it")
                .contains("Is there a rub test?")
                .contains("no legal advice");
        Answer pdf =
                client.post("/print/issue", "pieces", "V24-001", "kind", "care-label", "market", "eu", "symbols", "1");
        assertThat(pdf.header("Content-Type")).isEqualTo("application/pdf");
        List<IssuedPaper.Line> lines = wiring.archive()
                .ledger()
                .all(Kinds.ISSUED_PAPER)
                .get(0)
                .record()
                .pieces()
                .get(0)
                .lines();
        assertThat(lines).anySatisfy(line -> {
            assertThat(line.part()).isEqualTo("care-symbol");
            assertThat(line.basis()).contains("own method, 10 min, neutral soap");
        });
    }

    @Test
    void everyMarketCanBeChosenAndWhatItWantsIsTold() throws IOException {
        saved("/pieces", piece(WASHED));
        String page =
                client.get("/print?pieces=V24-001&kind=care-label&market=jp").words();
        assertThat(page)
                .contains("European Union", "Great Britain", "Northern Ireland", "Canada", "Japan")
                .contains("cannot be printed", "Japanese of silk", "names in other languages", "telephone number");
        assertThat(client.get("/print?pieces=V24-001&kind=care-label&market=uk").words())
                .contains("Make the PDF")
                .contains("as retained in Great Britain");
    }

    @Test
    void aScarfForJapanWithoutAWashTestIsHeldBack() throws IOException {
        saved("/pieces", piece());
        assertThat(client.get("/print?pieces=V24-001&kind=care-label&market=jp").words())
                .contains("1 April 2017");
        assertThat(client.get("/print?pieces=V24-001&kind=hang-tag&market=eu").words())
                .contains("Make the PDF");
    }
}
