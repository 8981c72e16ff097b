package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Dates and moments are written as the studio wishes, on pages and on documents. */
class WritingSettingsTest extends Scenario {
    private static final ZoneId TONGA = ZoneId.of("Pacific/Tongatapu");

    private void setting(String dateOrder, String timeZone) throws IOException {
        saved("/studio", "name", "Oficina Valderim", "numbers", "V", "dateOrder", dateOrder, "timeZone", timeZone);
    }

    private String written(String pattern, ZoneId zone) {
        Instant at = wiring.archive()
                .ledger()
                .history(tenterbook.archive.Kinds.STUDIO.key("studio"))
                .get(0)
                .writtenAt();
        return DateTimeFormatter.ofPattern(pattern, Locale.UK).format(ZonedDateTime.ofInstant(at, zone));
    }

    @Test
    void momentsAreShownInTheOrderAndTheTimeZoneOfTheStudio() throws IOException {
        setting("month-first", "Pacific/Tongatapu");
        assertThat(client.get("/history/studio/studio").words()).contains(written("MMMM d, yyyy, HH:mm", TONGA));
    }

    @Test
    void withoutASettingTheUsualOrderAndTheZoneOfTheComputerHold() throws IOException {
        setting("", "");
        assertThat(client.get("/history/studio/studio").words())
                .contains(written("d MMMM yyyy, HH:mm", ZoneId.systemDefault()));
    }

    @Test
    void aTimeZoneThatDoesNotExistIsRefusedBesideItsField() throws IOException {
        Answer answer = client.post("/studio", "name", "Oficina Valderim", "timeZone", "Europe/Sarelho");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.words()).contains("“Europe/Sarelho” is no time zone that this computer knows");
        assertThat(answer.text()).contains("value=\"Europe/Sarelho\"");
    }
}
