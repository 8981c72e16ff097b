package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** Several clients at once. */
class ManyClientsTest extends Scenario {
    @Test
    void tenPhotographsAddedToOnePieceAtOnceAreAllAdded() throws Exception {
        String number = saved("/pieces", "number", "V24-001", "title", "Tide").replace("/pieces/", "");
        List<Callable<Answer>> all = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            byte[] jpeg = Pictures.jpeg(700 + i);
            all.add(() -> client.postFiles(
                    "/api/pieces/" + number + "/photos", List.of(new Client.Part("files", "a.jpg", jpeg))));
        }
        ExecutorService threads = Executors.newFixedThreadPool(10);
        try {
            for (Future<Answer> each : threads.invokeAll(all)) {
                assertThat(each.get().status()).as(each.get().text()).isEqualTo(201);
            }
        } finally {
            threads.shutdownNow();
        }
        assertThat(wiring.archive().piece(number).orElseThrow().photos()).hasSize(10);
    }

    /** Waits until what was sent has all the threads that it gets. */
    private static void awaitBusyServer() throws InterruptedException {
        long before = -1;
        for (long now = serverThreads(); now != before; now = serverThreads()) {
            before = now;
            Thread.sleep(250);
        }
    }

    private static long serverThreads() {
        return Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().startsWith("Jetty"))
                .count();
    }

    /** A client that waits this long is held up: a connection that says nothing is closed after thirty. */
    private static final int HELD_UP_MILLIS = 10_000;

    @Test
    void threeHundredFormsThatBreakOffHalfWayHoldNobodyUp() throws Exception {
        List<Socket> half = new ArrayList<>();
        try {
            for (int i = 0; i < 300; i++) {
                Socket socket = new Socket(InetAddress.getLoopbackAddress(), wiring.port());
                half.add(socket);
                socket.getOutputStream().write("""
                        POST /pieces HTTP/1.1\r
                        Host: 127.0.0.1:%d\r
                        Content-Type: application/x-www-form-urlencoded\r
                        Content-Length: 1000\r
                        \r
                        number=V24-""".formatted(wiring.port()).getBytes(StandardCharsets.US_ASCII));
            }
            awaitBusyServer();
            Socket other = new Socket(InetAddress.getLoopbackAddress(), wiring.port());
            half.add(other);
            other.setSoTimeout(HELD_UP_MILLIS);
            other.getOutputStream()
                    .write("GET / HTTP/1.1\r\nHost: 127.0.0.1:%d\r\n\r\n"
                            .formatted(wiring.port())
                            .getBytes(StandardCharsets.US_ASCII));
            assertThatCode(() -> assertThat(
                                    new String(other.getInputStream().readNBytes(12), StandardCharsets.US_ASCII))
                            .isEqualTo("HTTP/1.1 200"))
                    .doesNotThrowAnyException();
        } finally {
            for (Socket socket : half) {
                socket.close();
            }
        }
    }
}
