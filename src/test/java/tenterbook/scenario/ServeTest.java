package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tenterbook.Thorough;
import tenterbook.archive.Archive;
import tenterbook.exchange.Restore;
import tenterbook.ledger.file.Progress;

/** Starting and ending the program. */
class ServeTest {
    @TempDir
    Path around;

    @Test
    void onABusyPortTheNextFreeOneIsTakenAndTold() throws Exception {
        try (ServerSocket busy = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"));
                ServedChild child = ServedChild.start(around.resolve("studio"), busy.getLocalPort())) {
            Client client = child.client();
            assertThat(client.port()).isGreaterThan(busy.getLocalPort());
            assertThat(child.said())
                    .contains("Port %d is busy".formatted(busy.getLocalPort()))
                    .contains("Using %d instead".formatted(client.port()));
            assertThat(client.get("/").status()).isEqualTo(200);
        }
    }

    @Test
    void aSecondProgramOnTheSameFolderIsToldSoAndTheFirstGoesOn() throws Exception {
        try (ServedChild first = ServedChild.start(around.resolve("studio"), 0)) {
            Client client = first.client();
            try (ServedChild second = ServedChild.start(around.resolve("studio"), 0)) {
                assertThat(second.ended()).isEqualTo(3);
                assertThat(second.said())
                        .contains("already open in another Tenterbook")
                        .doesNotContain("\tat ");
            }
            assertThat(client.get("/").status()).isEqualTo(200);
        }
    }

    @Test
    void aSecondOpenFindsTheFirstAndTheButtonEndsIt() throws Exception {
        Path studio = around.resolve("studio");
        Archive.open(studio, Scenario.CLOCK).close();
        try (ServedChild first = ServedChild.open(studio)) {
            Client client = first.client();
            assertThat(client.get("/studio").text()).contains("action=\"/studio/close\"");
            try (ServedChild second = ServedChild.open(studio)) {
                assertThat(second.ended()).isZero();
                assertThat(second.said()).contains("is open already", "Open http://127.0.0.1:" + client.port() + " ");
            }
            assertThat(client.send("POST", "/studio/close", new byte[0], "Origin", "http://evil.example")
                            .status())
                    .isEqualTo(403);
            assertThat(client.get("/").status()).isEqualTo(200);
            assertThat(client.post("/studio/close").words()).contains("Tenterbook is closed");
            assertThat(first.ended()).isZero();
        }
        assertThat(studio.resolve("port")).doesNotExist();
        assertThat(studio.resolve("ledger.db-wal")).doesNotExist();
    }

    /** Persian, Arabic and Bengali computers write a plain %d in digits of their own; all three in the thorough run. */
    static Stream<String> languages() {
        return Stream.of("fa-IR", "ar-EG", "bn-BD").limit(Thorough.times(1, 3));
    }

    @ParameterizedTest
    @MethodSource("languages")
    void onAComputerThatCountsInOtherDigitsNumbersRunOnAndABagIsRestored(String language) throws Exception {
        Path studio = around.resolve("studio");
        String[] parts = language.split("-");
        try (ServedChild child =
                ServedChild.start(studio, 0, "-Duser.language=" + parts[0], "-Duser.country=" + parts[1])) {
            Client client = child.client();
            for (int i = 1; i <= 3; i++) {
                Answer answer = client.postJson("/api/pieces", "{\"finished\": \"2024-03-05\"}");
                assertThat(answer.status()).as(answer.text()).isEqualTo(201);
                assertThat(answer.json().get("number").textValue()).matches("[0-9]{2}-00" + i);
            }
            assertThat(client.get("/").status()).isEqualTo(200);
            String work = client.post("/studio/pack").location();
            while (client.get(work, "HX-Request", "true").text().contains("<progress")) {
                Thread.sleep(50);
            }
        }
        try (Stream<Path> folders = Files.list(around)) {
            Path bag =
                    folders.filter(folder -> !folder.equals(studio)).findFirst().orElseThrow();
            new Restore(Scenario.CLOCK).restore(bag, around.resolve("again"), Progress.UNWATCHED);
        }
    }

    @Test
    void todayIsTheDayWhereTheMakerIs() throws Exception {
        // One of the two is always in another day than Greenwich.
        ZoneId zone =
                ZoneId.of(LocalTime.now(ZoneOffset.UTC).getHour() < 11 ? "Pacific/Pago_Pago" : "Pacific/Kiritimati");
        try (ServedChild child = ServedChild.start(around.resolve("studio"), 0, "-Duser.timezone=" + zone)) {
            Client client = child.client();
            client.post("/pieces", "number", "V24-001", "title", "Maré");
            LocalDate before = LocalDate.now(zone);
            String form = client.post("/pieces/V24-001/dye-again").location();
            assertThat(LocalDate.parse(client.get(form).field("when"))).isBetween(before, LocalDate.now(zone));
        }
    }

    @Test
    void whenAskedToEndItLetsTheArchiveGo() throws Exception {
        Path studio = around.resolve("studio");
        try (ServedChild child = ServedChild.start(studio, 0)) {
            Client client = child.client();
            assertThat(client.post("/pieces", "number", "V24-001", "title", "Maré")
                            .status())
                    .isEqualTo(303);
            child.end();
            child.ended();
            assertThat(child.said()).doesNotContain("Exception");
        }
        try (Archive archive = Archive.open(studio, Scenario.CLOCK)) {
            assertThat(archive.piece("V24-001")).isPresent();
        }
        assertThat(studio.resolve("ledger.db-wal"))
                .as("the write-ahead log is folded in at a tidy end")
                .doesNotExist();
    }

    @Test
    void aLedgerThatIsNotBuiltAsOursIsServedWithAWarning() throws Exception {
        Path studio = around.resolve("studio");
        Archive.open(studio, Scenario.CLOCK).close();
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + studio.resolve("ledger.db"));
                var statement = connection.createStatement()) {
            statement.execute("CREATE VIEW mine AS SELECT 1 AS one");
        }
        try (ServedChild child = ServedChild.start(studio, 0)) {
            Client client = child.client();
            assertThat(child.said()).contains("WARN").contains("has a view mine that is not ours");
            assertThat(client.get("/studio").words())
                    .contains("no copy is packed until it is mended")
                    .contains("DROP VIEW \"mine\";");
        }
    }
}
