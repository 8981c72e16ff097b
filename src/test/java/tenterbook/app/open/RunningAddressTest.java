package tenterbook.app.open;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunningAddressTest {
    @TempDir
    Path archive;

    @Test
    void theNotedPortIsAnAddressWhileSomethingListensThere() throws IOException {
        RunningAddress running = RunningAddress.in(archive);
        assertThat(running.now()).isEmpty();
        try (ServerSocket listening = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            running.note(listening.getLocalPort());
            assertThat(RunningAddress.in(archive).now()).contains("http://127.0.0.1:" + listening.getLocalPort());
            running.forget();
            assertThat(running.now()).isEmpty();
            running.note(listening.getLocalPort());
        }
        assertThat(running.now()).as("left by a killed program").isEmpty();
    }

    @Test
    void aPortNotedByAProgramThatEndedIsNotBelieved() throws IOException {
        try (ServerSocket listening = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            RunningAddress.in(archive).note(listening.getLocalPort());
            Path file = archive.resolve("port");
            String own = Files.readString(file);
            for (String other : new String[] {
                String.valueOf(listening.getLocalPort()),
                own.replaceFirst(" \\d+ ", " 2147483646 "),
                own.replaceFirst(" \\d{4}-", " 1970-")
            }) {
                Files.writeString(file, other);
                assertThat(RunningAddress.in(archive).now()).as(other).isEmpty();
            }
        }
    }

    @Test
    void whatIsNoPortIsNoAddress() throws Exception {
        for (String text : new String[] {"", "port", "0", "-1", "65536", "7117 7118"}) {
            Files.writeString(archive.resolve("port"), text);
            assertThat(RunningAddress.in(archive).within(Duration.ZERO))
                    .as(text)
                    .isEmpty();
        }
    }
}
