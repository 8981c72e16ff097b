package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is due on 2024-09-30, the day of these scenarios. */
class TodayTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
        saved(
                "/people",
                "id",
                "museu",
                "name",
                "Museu do Sarelho, sala das aves aquáticas e ribeirinhas",
                "kind",
                "museum");
        saved("/pieces", "number", "V24-001", "title", "Figueira");
        saved("/pieces", "number", "V24-002", "title", "Heron");
        saved("/pieces", "number", "V24-003");
    }

    private void lend(String number, String until, String... more) throws IOException {
        String[] all = new String[8 + more.length];
        System.arraycopy(
                new String[] {"pieces.0.piece", number, "when", "2024-01-10", "until", until, "party", "museu"},
                0,
                all,
                0,
                8);
        System.arraycopy(more, 0, all, 8, more.length);
        saved("/acts/lend", all);
    }

    @Test
    void whatIsOverdueAndWhatEndsSoonIsNamed() throws IOException {
        lend("V24-001", "2024-09-01");
        lend("V24-002", "2024-10-20", "agreement", "yes");
        String today = client.get("/today").words();
        assertThat(today)
                .containsSubsequence("Overdue", "V24-001", "until 2024-09-01", "Ends within 30 days", "V24-002");
        assertThat(today).contains("A24-001", "Pieces without a title 1", "Pieces without a photograph 3");
        assertThat(client.get("/agreements/A24-001").words()).contains("It ends 2024-10-20; one piece is still there.");
        saved("/acts/return", "pieces.0.piece", "V24-001", "when", "2024-09-29");
        assertThat(client.get("/today").words()).doesNotContain("Overdue");
    }

    /** RFC 5545: lines end with CR LF and are folded at 75 octets (3.1), commas are escaped (3.3.11), DATE values (3.3.4). */
    @Test
    void theDaysCanBeTakenIntoACalendar() throws IOException {
        lend("V24-001", "2024-12-01");
        Answer answer = client.get("/today.ics");
        assertThat(answer.header("Content-Type")).startsWith("text/calendar");
        String[] lines = answer.text().split("\r\n");
        assertThat(lines[0]).isEqualTo("BEGIN:VCALENDAR");
        assertThat(lines).contains("DTSTART;VALUE=DATE:20241201", "END:VCALENDAR");
        assertThat(lines)
                .allSatisfy(line ->
                        assertThat(line.getBytes(StandardCharsets.UTF_8)).hasSizeLessThanOrEqualTo(75));
        assertThat(answer.text().replace("\r\n ", ""))
                .contains("SUMMARY:V24-001: lent ends (Museu do Sarelho\\, sala das aves aquáticas e ribeirinhas)");
    }

    @Test
    void aLotThatRunsLowIsNamed() throws IOException {
        saved("/lots", "id", "weld-1", "role", "dye", "name", "weld", "bought", "40 g", "warnBelow", "50 g");
        saved("/lots", "id", "weld-2", "role", "dye", "name", "weld", "bought", "60 g", "warnBelow", "50 g");
        saved("/lots", "id", "weld-3", "role", "dye", "name", "madder", "warnBelow", "50 g");
        assertThat(client.get("/today").words().replace('\u00a0', ' '))
                .contains("Lots running low weld left: 40 g; to be shown below 50 g madder left: cannot be known")
                .doesNotContain("60 g");
        assertThat(client.get("/lots/weld-2").words().replace('\u00a0', ' ')).contains("Left, as far as recorded 60 g");
    }

    @Test
    void whatAGalleryOwesStandsOnItsAgreementAndToday() throws IOException {
        saved(
                "/acts/consign",
                "pieces.0.piece",
                "V24-001",
                "when",
                "2024-05-01",
                "party",
                "museu",
                "commission",
                "45",
                "agreement",
                "yes");
        saved("/acts/sell", "pieces.0.piece", "V24-001", "pieces.0.price", "1104.55 EUR", "when", "2024-06-01");
        assertThat(client.get("/agreements/A24-001").words())
                .contains(
                        "less commission 497.05\u00a0EUR, leaves 607.50\u00a0EUR",
                        "Still owed to you: 607.50\u00a0EUR");
        assertThat(client.get("/today").words()).contains("Owed to you", "607.50\u00a0EUR");
        saved(
                "/agreements/A24-001/edit",
                "kind",
                "consignment",
                "version",
                "1",
                "party",
                "museu",
                "from",
                "2024-05-01",
                "commission",
                "45",
                "pieces.0.piece",
                "V24-001",
                "payments.0.kind",
                "paid",
                "payments.0.amount",
                "607.50 EUR",
                "payments.0.tax",
                "113.60 EUR");
        assertThat(client.get("/agreements/A24-001").words())
                .contains("Nothing is owed.", "tax in it: 113.60\u00a0EUR");
        assertThat(client.get("/today").words()).doesNotContain("Owed to you");
    }
}
