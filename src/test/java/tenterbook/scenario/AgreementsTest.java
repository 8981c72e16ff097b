package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.piece.agreement.Agreement;

/** Loans and consignments on their pages, and particulars of the studio that change. */
class AgreementsTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        saved("/people", "id", "museu", "name", "Museu do Sarelho", "kind", "museum");
        saved("/pieces", "number", "V24-001", "title", "Figueira", "made.0.clamping", "C24-001");
    }

    private Answer moved(String... more) throws IOException {
        String[] all = new String[14 + more.length];
        String[] form = {
            "name",
            "Oficina Valderim",
            "maker",
            "Inês Valderim",
            "place",
            "Vila Alta, Spain",
            "dyedIn",
            "Spain",
            "numbers",
            "V",
            "currency",
            "EUR",
            "version",
            "1"
        };
        System.arraycopy(form, 0, all, 0, 14);
        System.arraycopy(more, 0, all, 14, more.length);
        return client.post("/studio", all);
    }

    private String origin() {
        return wiring.archive().studio().earlier().stream()
                .map(era -> era.until().entered() + " " + era.dyedIn())
                .reduce("", String::concat);
    }

    @Test
    void anotherCountryAsksSinceWhenAndKeepsWhatWasTyped() throws IOException {
        Answer asked = moved();
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.words()).contains("Since when?", "Say from which day the new particulars hold");
        assertThat(asked.text()).contains("Vila Alta, Spain");
        assertThat(wiring.archive().studio().dyedIn()).isEqualTo("Portugal");

        assertThat(moved("since", "some day").status()).isEqualTo(422);
        assertThat(moved("since", "March 2025").status()).isEqualTo(303);
        assertThat(wiring.archive().studio().dyedIn()).isEqualTo("Spain");
        assertThat(origin()).isEqualTo("March 2025 Portugal");
    }

    @Test
    void aMistakeIsCorrectedWithoutADay() throws IOException {
        assertThat(moved("correction", "1").status()).isEqualTo(303);
        assertThat(wiring.archive().studio().dyedIn()).isEqualTo("Spain");
        assertThat(origin()).isEmpty();
    }

    @Test
    void aNewClampingKeepsWhereItIsMadeAndByWhom() throws IOException {
        assertThat(client.get("/clampings/new").text())
                .contains("value=\"Portugal\"", "value=\"Inês Valderim\"", "value=\"Porto Sarelho, Portugal\"");
    }

    @Test
    void aLoanIsRecordedWithItsPiecesAndItsScheduleIsIssued() throws IOException {
        assertThat(client.get("/agreements/new?pieces=V24-001").text()).contains("A24-001", "value=\"V24-001\"");
        String page = saved(
                "/agreements",
                "id",
                "",
                "kind",
                "loan",
                "party",
                "Museu do Sarelho",
                "purpose",
                "Cloth and water",
                "from",
                "2024-10-01",
                "until",
                "2025-01-31",
                "pieces.0.piece",
                "V24-001",
                "pieces.0.value",
                "900 EUR",
                "pieces.0.theirNumber",
                "L.7");
        assertThat(page).isEqualTo("/agreements/A24-001");
        assertThat(client.get(page).words().replace('\u00a0', ' '))
                .contains("Museu do Sarelho", "V24-001 Figueira", "900 EUR", "L.7");
        assertThat(client.get("/agreements").words()).contains("A24-001 Cloth and water");
        Answer piece = client.get("/pieces/V24-001");
        assertThat(piece.text()).contains("href=\"/agreements/A24-001\"");
        assertThat(piece.words().replace('\u00a0', ' '))
                .contains("Loans and consignments", "Museu do Sarelho; from 2024-10-01, until 2025-01-31; 900 EUR");
        String schedule = "kind=loan-schedule&valued=1&agreement=A24-001&pieces=V24-001";
        assertThat(client.get("/documents?" + schedule).words().replace('\u00a0', ' '))
                .contains("Museu do Sarelho", "1 October 2024", "900 EUR")
                .doesNotContain("Not issued until");
        assertThat(client.post(
                                "/documents/issue",
                                "kind",
                                "loan-schedule",
                                "valued",
                                "1",
                                "agreement",
                                "A24-001",
                                "pieces",
                                "V24-001")
                        .status())
                .isEqualTo(200);
        assertThat(wiring.archive().ledger().count(Kinds.ISSUED_PAPER)).isEqualTo(1);
    }

    @Test
    void agreementsAreReadWithAnSqliteShell() throws Exception {
        saved(
                "/agreements",
                "id",
                "",
                "kind",
                "consignment",
                "party",
                "museu",
                "until",
                "2025-01-31",
                "pieces.0.piece",
                "V24-001",
                "pieces.0.value",
                "900 EUR");
        try (Connection shell = DriverManager.getConnection("jdbc:sqlite:" + around.resolve("studio/ledger.db"));
                Statement query = shell.createStatement();
                ResultSet row =
                        query.executeQuery("SELECT a.kind, a.party, a.ends, a.pieces, p.number, p.value, p.currency"
                                + " FROM agreements AS a JOIN agreement_pieces AS p ON p.agreement = a.id")) {
            assertThat(row.next()).isTrue();
            List<String> found = new ArrayList<>();
            for (int column = 1; column <= 7; column++) {
                found.add(row.getString(column));
            }
            assertThat(found).containsExactly("consignment", "museu", "2025-01-31", "1", "V24-001", "900.00", "EUR");
        }
    }

    @Test
    void thePageOfAClothShowsWhatItsFibresAreKnownFrom() throws IOException {
        wiring.archive()
                .ledger()
                .write(
                        "Inês",
                        act -> act.create(
                                Kinds.CLOTH,
                                Kinds.CLOTH
                                        .codec()
                                        .fromText(
                                                "{\"id\": \"WS\", \"name\": \"wool and silk\", \"content\": ["
                                                        + "{\"fibre\": \"wool\", \"percent\": 70, \"evidence\": \"laboratory\", \"measured\": 68},"
                                                        + " {\"fibre\": \"silk\", \"percent\": 30, \"evidence\": \"invoice\"}]}")));
        assertThat(client.get("/cloths/WS").words().replace('\u00a0', ' '))
                .contains("Evidence of the wool a laboratory; measured 68 %", "Evidence of the silk an invoice");
    }

    @Test
    void aScheduleWithNobodyOnItIsNotIssuedAndSaysWhy() throws IOException {
        Answer shown = client.get("/documents?kind=loan-schedule&pieces=V24-001");
        assertThat(shown.words()).contains("Not issued until this is known", "Nobody is named");
        assertThat(shown.text()).doesNotContain("action=\"/documents/issue\"");
        Answer refused = client.post("/documents/issue", "kind", "loan-schedule", "pieces", "V24-001");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("Nobody is named", "Nothing was kept");
        assertThat(wiring.archive().ledger().count(Kinds.ISSUED_PAPER)).isZero();
    }

    @Test
    void anErasedPersonLeavesTheAgreement() throws IOException {
        saved(
                "/agreements",
                "id",
                "",
                "kind",
                "loan",
                "party",
                "museu",
                "purpose",
                "Cloth and water",
                "pieces.0.piece",
                "V24-001");
        assertThat(client.get("/people/museu").words()).contains("agreement");
        over(saved("/people/museu/erase", "confirm", "museu", "reason", ""));
        Agreement left = wiring.archive()
                .ledger()
                .find(Kinds.AGREEMENT, "A24-001")
                .orElseThrow()
                .record();
        assertThat(left.party()).isNull();
        assertThat(left.purpose()).isEmpty();
        assertThat(left.pieces()).hasSize(1);
    }
}
