package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;

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
}
