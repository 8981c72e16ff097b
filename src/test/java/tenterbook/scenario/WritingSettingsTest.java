package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.board.BoardPair;
import tenterbook.board.Hole;
import tenterbook.ledger.Saved;
import tenterbook.measure.Unit;
import tenterbook.piece.Studio;

/** Dates and moments are written as the studio wishes, on pages and on documents. */
class WritingSettingsTest extends Scenario {
    private static final ZoneId TONGA = ZoneId.of("Pacific/Tongatapu");

    private void setting(String dateOrder, String timeZone) throws IOException {
        saved("/studio", "name", "Oficina Valderim", "numbers", "V", "dateOrder", dateOrder, "timeZone", timeZone);
    }

    private String written(String pattern, ZoneId zone) {
        Instant at = wiring.archive()
                .ledger()
                .history(Kinds.STUDIO.key("studio"))
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

    private void lengths(String units) throws IOException {
        Saved<Studio> now =
                wiring.archive().ledger().find(Kinds.STUDIO, Kinds.THE_STUDIO).orElse(null);
        String version = now == null ? "0" : String.valueOf(now.version());
        saved("/studio", "version", version, "name", "Oficina Valderim", "numbers", "V", "lengths", units);
    }

    /** An inch is 25.4 mm (international yard and pound, 1959). */
    @Test
    void theStudioChoosesOneUnitForClothAndBoardsAndWhatIsRecordedKeepsItsOwn() throws IOException {
        assertThat(client.get("/studio").text())
                .as("a new archive is offered one unit for both")
                .contains("<option value=\"cm\" selected");
        lengths("");
        assertThat(client.get("/boards/new").text()).contains("data-unit=\"millimetre\"");
        assertThat(client.get("/pieces/new").text()).contains("data-unit=\"centimetre\"");
        saved("/boards", "id", "B01", "image", "Heron", "length", "420", "width", "340");
        lengths("in");
        assertThat(client.get("/pieces/new").text())
                .contains("data-unit=\"inch\"")
                .doesNotContain("centimetre");
        Answer form = client.get("/boards/B01/edit");
        assertThat(form.field("length")).isEqualTo("420 mm");
        assertThat(form.field("thickness")).isEmpty();
        String[] edited = {
            "version",
            "1",
            "image",
            "Heron",
            "length",
            form.field("length"),
            "width",
            form.field("width"),
            "thickness",
            "1",
            "states.0.name",
            "I",
            "states.0.holes.0.name",
            "1",
            "states.0.holes.0.acrossMm",
            "1/2",
            "states.0.holes.0.downMm",
            "3 cm"
        };
        saved("/boards/B01/edit", edited);
        BoardPair board = wiring.archive().board("B01").orElseThrow();
        assertThat(board.length().in(Unit.MILLIMETRE).low()).isEqualTo(420);
        assertThat(board.width().in(Unit.MILLIMETRE).low()).isEqualTo(340);
        assertThat(board.thickness().in(Unit.MILLIMETRE).low()).isCloseTo(25.4, within(1e-9));
        Hole hole = board.states().get(0).holes().get(0);
        assertThat(hole.acrossMm()).isEqualTo(12.7);
        assertThat(hole.downMm()).isEqualTo(30);
        Answer again = client.get("/boards/B01/edit");
        assertThat(again.field("thickness")).isEqualTo("1");
        assertThat(again.field("states.0.holes.0.acrossMm")).isEqualTo("12.7 mm");
        assertThat(client.postJson("/api/cloths", "{\"id\": \"LV\", \"name\": \"linen\", \"width\": \"55\"}")
                        .text())
                .contains("\"unit\":\"inch\"");
        lengths("cm");
        assertThat(client.get("/boards/B01/edit").field("thickness")).isEqualTo("1 in");
    }

    @Test
    void aLengthThatWasNotEditedKeepsTheTextThatWasTypedWhateverUnitIsChosenLater() throws IOException {
        lengths("cm");
        saved(
                "/boards",
                "id",
                "B01",
                "image",
                "Heron",
                "length",
                "42",
                "width",
                "34",
                "thickness",
                "at most 3",
                "thickness.basis",
                "measured");
        lengths("in");
        Answer form = client.get("/boards/B01/edit");
        assertThat(form.field("thickness")).isEqualTo("at most 3 cm");
        String[] same = {
            "version",
            "1",
            "image",
            "Heron",
            "length",
            form.field("length"),
            "width",
            form.field("width"),
            "thickness",
            form.field("thickness"),
            "thickness.basis",
            "measured"
        };
        BoardPair before = wiring.archive().board("B01").orElseThrow();
        client.post("/boards/B01/edit", same);
        assertThat(wiring.archive().board("B01").orElseThrow()).isEqualTo(before);
        assertThat(wiring.archive().ledger().history(Kinds.BOARD_PAIR.key("B01")))
                .hasSize(1);
        same[7] = "12 in";
        saved("/boards/B01/edit", same);
        BoardPair after = wiring.archive().board("B01").orElseThrow();
        assertThat(after.thickness()).isEqualTo(before.thickness());
        assertThat(after.length()).isEqualTo(before.length());
        assertThat(after.width().unit()).isEqualTo(Unit.INCH);
        assertThat(client.get("/boards/B01/edit").field("thickness")).isEqualTo("at most 3 cm");
    }

    @Test
    void aTimeZoneThatDoesNotExistIsRefusedBesideItsField() throws IOException {
        Answer answer = client.post("/studio", "name", "Oficina Valderim", "timeZone", "Europe/Sarelho");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.words()).contains("“Europe/Sarelho” is no time zone that this computer knows");
        assertThat(answer.text()).contains("value=\"Europe/Sarelho\"");
    }
}
