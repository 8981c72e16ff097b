package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.ledger.LedgerTransaction;
import tenterbook.ledger.Saved;
import tenterbook.ledger.revision.Kind;
import tenterbook.piece.fair.Fair;

/** Fairs on 2024-09-30, the day of these scenarios. */
class FairsTest extends Scenario {
    @BeforeEach
    void fill() {
        wiring.archive().ledger().write("maker", act -> {
            create(
                    act,
                    Kinds.STUDIO,
                    "{'name': 'Oficina Valderim', 'maker': 'Inês Valderim', 'dyedIn': 'Portugal',"
                            + " 'place': 'Porto Sarelho, Portugal', 'numbers': 'V', 'currency': 'EUR'}");
            create(
                    act,
                    Kinds.CLOTH,
                    "{'id': 'SH', 'name': 'silk habotai', 'wovenIn': 'China',"
                            + " 'content': [{'fibre': 'silk', 'percent': 100}]}");
            create(act, Kinds.CLAMPING, "{'id': 'C24-001', 'cuts': [{'cloth': 'SH'}]}");
            create(act, Kinds.PARTY, "{'id': 'museu', 'name': 'Museu do Sarelho', 'kind': 'museum'}");
            piece(act, "V24-001", ", 'title': 'Figueira', 'price': {'amount': '240', 'currency': 'EUR'}");
            piece(act, "V24-002", "");
            piece(act, "V24-003", ", 'title': 'Garça', 'price': {'amount': '9', 'currency': 'EUR'}" + lent("20"));
            piece(act, "V24-004", ", 'title': 'Salinas', 'price': {'amount': '90', 'currency': 'EUR'}" + lent("19"));
            create(
                    act,
                    Kinds.FAIR,
                    "{'id': 'F24-001', 'kind': 'fair', 'name': 'Feira da Maré', 'soldIn': 'Portugal',"
                            + " 'from': " + day("20") + ", 'until': " + day("22") + ","
                            + " 'priceStatement': 'All prices include 23 % VAT.', 'tasks': [{'text': 'Rent the stall'}],"
                            + " 'pieces': [{'piece': 'V24-001', 'box': '1'}, {'piece': 'V24-002'}, {'piece': 'V24-003'},"
                            + " {'piece': 'V24-004'}]}");
            return null;
        });
    }

    private static <T> void create(LedgerTransaction act, Kind<T> kind, String json) {
        act.create(kind, kind.codec().fromText(json.replace('\'', '"')));
    }

    private static void piece(LedgerTransaction act, String number, String more) {
        create(act, Kinds.PIECE, "{'number': '" + number + "', 'made': [{'clamping': 'C24-001'}]" + more + "}");
    }

    private static String day(String october) {
        String day = "2024-10-" + october;
        return "{'entered': '" + day + "', 'from': '" + day + "', 'to': '" + day + "'}";
    }

    private static String lent(String until) {
        return ", 'events': [{'kind': 'lent', 'party': 'museu', 'until': " + day(until) + "}]";
    }

    private Fair fair() {
        return wiring.archive().ledger().all(Kinds.FAIR).stream()
                .map(Saved::record)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void eachPieceShowsWhatItLacksForThatFairAndTodayNamesIt() throws IOException {
        String page = client.get("/fairs/F24-001").words();
        assertThat(page)
                .containsSubsequence(
                        "Still to be done",
                        "Pieces not available then 1",
                        "without a title 1",
                        "without a price 1",
                        "lawful hang tag 4")
                .containsSubsequence("V24-002", "Title to be given", "Price to be set", "Condition to be examined")
                .containsSubsequence("V24-003", "Lent until 2024-10-20", "V24-004")
                .doesNotContain("until 2024-10-19");
        assertThat(client.get("/today").words())
                .containsSubsequence("Next fair", "F24-001 Feira da Maré", "lawful hang tag 4", "still open 1");
        assertThat(client.get("/today.ics").text()).contains("SUMMARY:F24-001 Feira da Maré begins");
        saved("/acts/sell", "pieces.0.piece", "V24-001", "when", "2024-09-29");
        assertThat(client.get("/fairs/F24-001").words()).contains("Pieces not available then 2", "Not available: sold");
        String made =
                saved("/fairs", "kind", "market", "name", "Praça", "from", "summer 2025", "pieces.0.piece", "V24-002");
        assertThat(client.get(made).words())
                .contains("F24-002 Praça", "summer 2025", "country of sale is not recorded");
    }

    @Test
    void piecesAreChosenByTickingAndTheirBoxesStay() throws IOException {
        assertThat(client.get("/fairs/F24-001/pieces?find=Figueira&pieces=V24-001&pieces=V24-004")
                        .text())
                .contains("formaction=\"/fairs/F24-001/pieces\"", "value=\"V24-004\"");
        saved("/fairs/F24-001/pieces", "pieces", "V24-004", "pieces", "V24-001");
        assertThat(fair().pieces())
                .extracting(each -> each.piece() + " " + each.box())
                .containsExactly("V24-004 ", "V24-001 1");
        saved("/fairs/F24-001/tasks", "done", "0", "more", "Pack the rods");
        assertThat(fair().tasks())
                .extracting(task -> task.text() + " " + task.done())
                .containsExactly("Rent the stall true", "Pack the rods false");
    }

    @Test
    void aPieceThatCannotBeThereIsLeftOutAndNamed() throws IOException {
        saved("/fairs/F24-001/pieces", "pieces", "V24-001", "pieces", "V24-003");
        String page = client.get("/fairs/F24-001/papers").words();
        assertThat(page).containsSubsequence("Left out, because they cannot be there", "V24-003:", "Price list");
        assertThat(page.replaceAll("Left out.*?Hang tag", "")).doesNotContain("V24-003");
        saved("/fairs/F24-001/papers");
        assertThat(wiring.archive().ledger().all(Kinds.ISSUED_PAPER))
                .filteredOn(saved -> saved.record().kind().equals("price-list"))
                .singleElement()
                .satisfies(saved -> assertThat(saved.record().pieces())
                        .extracting(each -> each.piece().value())
                        .containsExactly("V24-001"));
    }

    @Test
    void allPapersThatAreNotHeldBackArePrintedAtOnce() throws IOException {
        assertThat(client.get("/fairs/F24-001/papers").words())
                .containsSubsequence("Price list", "Held back", "No price is recorded for V24-002.", "Packing list");
        saved("/fairs/F24-001/pieces", "pieces", "V24-001", "pieces", "V24-004");
        String issued = saved("/fairs/F24-001/papers");
        assertThat(wiring.archive().ledger().all(Kinds.ISSUED_PAPER))
                .extracting(saved -> saved.record().kind())
                .containsExactlyInAnyOrder("hang-tag", "price-list", "packing-list", "fair-checklist");
        assertThat(client.get(issued).words()).contains("All in one PDF");
        Answer all = client.get(issued.replace("/papers?", "/papers.pdf?"));
        try (PDDocument document = Loader.loadPDF(all.body())) {
            assertThat(document.getNumberOfPages()).isEqualTo(4);
            assertThat(new PDFTextStripper().getText(document).replace('\u00a0', ' '))
                    .contains("240 EUR", "All prices include 23 % VAT.", "Box 1", "Rent the stall");
        }
        assertThat(client.get("/fairs/F24-001").words()).doesNotContain("Hang tag to be printed");
    }
}
