package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.app.Wiring;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;

/** A clock that starts from 1970 again, as after a flat battery: nothing gets its date before somebody was asked. */
class FlatBatteryTest {
    private static final Clock FLAT = Clock.fixed(Instant.parse("1970-01-01T00:03:00Z"), ZoneOffset.UTC);

    @TempDir
    Path around;

    private Path studio;

    @BeforeEach
    void write() {
        studio = around.resolve("studio");
        try (Archive archive = Archive.open(studio, Scenario.CLOCK)) {
            archive.ledger()
                    .write("Inês", act -> act.create(Kinds.PARTY, new Party(new PartyId("new"), "Nova", "", "", "")));
        }
    }

    private static void isAsked(Answer answer) {
        assertThat(answer.status()).isEqualTo(409);
        assertThat(answer.text())
                .contains("shows 1 January 1970")
                .contains("written on 30 September 2024")
                .contains("no number was given");
    }

    @Test
    void nothingIsNumberedOrSavedUntilThePersonSaysWhichDayItIs() throws IOException {
        try (Wiring wiring = Wiring.serve(studio, 0, FLAT)) {
            Client client = new Client(wiring.port());
            assertThat(ArchiveCheck.atStart(wiring.archive()))
                    .singleElement()
                    .satisfies(finding -> assertThat(finding.toString()).contains("1 January 1970"));
            assertThat(client.get("/").text()).contains("The clock is right: 1 January 1970", "action=\"/clock\"");
            isAsked(client.get("/pieces/new"));
            isAsked(client.postJson("/api/pieces", "{\"title\": \"by program\"}"));
            Answer form = client.post("/pieces", "number", "70-001", "title", "typed before");
            isAsked(form);
            assertThat(form.text()).as("the typing").contains("typed before");
            assertThat(client.post("/people", "id", "x", "name", "X").status()).isEqualTo(409);
            assertThat(wiring.archive().ledger().lastSequence()).isEqualTo(1);

            assertThat(client.post("/clock", "day", "someday").status()).isEqualTo(303);
            isAsked(client.get("/clampings/new"));
            assertThat(client.post("/clock", "day", "2026-11-29").status()).isEqualTo(303);
            assertThat(client.get("/").text()).doesNotContain("action=\"/clock\"");
            assertThat(client.postJson("/api/pieces", "{\"title\": \"by program\"}")
                            .text())
                    .contains("26-001", "2026-11-29T00:03:00Z");
        }
    }

    @Test
    void aClockThatIsRightIsGoneOnWith() throws IOException {
        try (Wiring wiring = Wiring.serve(studio, 0, FLAT)) {
            Client client = new Client(wiring.port());
            assertThat(client.post("/clock", "clock", "right").status()).isEqualTo(303);
            assertThat(client.postJson("/api/pieces", "{\"title\": \"long ago\"}")
                            .text())
                    .contains("70-001");
        }
    }
}
