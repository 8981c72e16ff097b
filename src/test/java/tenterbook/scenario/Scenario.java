package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.app.Wiring;

/** A server on an archive of its own for each test, and the client that talks to it. */
abstract class Scenario {
    static final Clock CLOCK = Clock.fixed(Instant.parse("2024-09-30T16:20:00Z"), ZoneOffset.UTC);

    @TempDir
    Path around;

    Wiring wiring;
    Client client;

    @BeforeEach
    void serve() {
        wiring = Wiring.serve(around.resolve("studio"), 0, CLOCK);
        client = new Client(wiring.port());
    }

    @AfterEach
    void close() {
        wiring.close();
    }

    /** Posts a form that must be taken, and gives where the browser goes next. */
    String saved(String path, String... namesAndValues) throws IOException {
        Answer answer = client.post(path, namesAndValues);
        assertThat(answer.status()).as(answer.words()).isEqualTo(303);
        return answer.location();
    }

    /** Looks at long work until it is over, as its page does, and gives the words it ends with. */
    String over(String work) throws IOException {
        return ended(work).words();
    }

    Answer ended(String work) throws IOException {
        long until = System.nanoTime() + 60_000_000_000L;
        while (System.nanoTime() < until) {
            Answer answer = client.get(work, "HX-Request", "true");
            assertThat(answer.status()).isEqualTo(200);
            if (!answer.text().contains("<progress")) {
                return answer;
            }
        }
        throw new AssertionError("The work " + work + " did not end in a minute");
    }

    /** The maker, so that labels have a name. */
    void studio() throws IOException {
        saved(
                "/studio",
                "name",
                "Oficina Valderim",
                "maker",
                "Inês Valderim",
                "place",
                "Porto Sarelho, Portugal",
                "dyedIn",
                "Portugal",
                "numbers",
                "V",
                "currency",
                "EUR",
                "version",
                "0");
    }

    /** A board, a bolt of silk, a dye and a clamping C24-001 that uses them. */
    void clamping() throws IOException {
        saved("/boards", "id", "B01", "image", "Fig and wasp", "wood", "pear", "states.0.name", "I");
        saved(
                "/cloths",
                "id",
                "SH",
                "name",
                "silk habotai",
                "content.0.fibre",
                "silk",
                "content.0.percent",
                "100",
                "arealWeight",
                "45 g/m²",
                "wovenIn",
                "China");
        saved("/lots", "id", "woad-1", "role", "dye", "name", "woad", "source", "botanical");
        saved(
                "/clampings",
                "id",
                "C24-001",
                "title",
                "figs, four dips",
                "boards.0.use",
                "B01/I",
                "cuts.0.cloth",
                "SH",
                "cuts.0.length",
                "180 cm",
                "cuts.0.width",
                "90 cm",
                "steps.0.kind",
                "dips",
                "steps.0.dips.count",
                "4",
                "steps.0.charges.0.lot",
                "woad-1",
                "steps.0.temperature",
                "38 °C");
    }
}
