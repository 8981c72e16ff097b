package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.Kinds;

/** Only this computer's own pages reach the archive. */
class GuardTest extends Scenario {
    @Test
    void nothingButLoopbackIsListenedOn() throws IOException {
        List<InetAddress> others = Collections.list(NetworkInterface.getNetworkInterfaces()).stream()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(address -> !address.isLoopbackAddress())
                .toList();
        Assumptions.assumeFalse(others.isEmpty(), "this computer has no address but loopback");
        for (InetAddress other : others) {
            assertThatThrownBy(() -> new Socket(other, client.port()).close()).isInstanceOf(IOException.class);
        }
        assertThat(client.get("/").status()).isEqualTo(200);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "evil.example",
                "evil.example:7117",
                "127.0.0.1.evil.example",
                "localhost.evil.example",
                "10.0.0.1"
            })
    void aForeignHostIsTurnedAway(String host) throws IOException {
        for (String path : List.of("/", "/api/pieces", "/style/tenterbook.css", "/no-such-page", "/photos/x/small")) {
            Answer answer = client.get(path, "Host", host);
            assertThat(answer.status()).as(path).isEqualTo(421);
            assertThat(answer.text()).as(path).doesNotContain("--cloth").contains("this computer");
        }
    }

    @Test
    void loopbackNamesAreOurOwn() throws IOException {
        for (String host : List.of("localhost", "127.0.0.1", "[::1]", "LOCALHOST")) {
            assertThat(client.get("/", "Host", host + ":" + client.port()).status())
                    .as(host)
                    .isEqualTo(200);
        }
    }

    private Answer record(String number, String... headers) throws IOException {
        String[] all = java.util.Arrays.copyOf(headers, headers.length + 2);
        all[headers.length] = "Content-Type";
        all[headers.length + 1] = "application/x-www-form-urlencoded";
        return client.send("POST", "/pieces", ("number=" + number).getBytes(), all);
    }

    @Test
    void aChangeFromAnotherPageIsRefusedAndChangesNothing() throws IOException {
        String own = "http://127.0.0.1:" + client.port();
        for (String[] headers : List.of(
                new String[] {"Origin", "http://evil.example"},
                new String[] {"Origin", "null"},
                new String[] {"Origin", "https://127.0.0.1:" + client.port()},
                new String[] {"Origin", "http://127.0.0.1:1"},
                new String[] {"Origin", "http://127.0.0.1:" + client.port() + ".evil.example"},
                new String[] {"Origin", "not an address"},
                new String[] {"Origin", "http://localhost:" + client.port()},
                new String[] {"Origin", ""},
                new String[] {"Sec-Fetch-Site", "cross-site"},
                new String[] {"Sec-Fetch-Site", "same-site"},
                new String[] {"Origin", own, "Host", "localhost:" + client.port()})) {
            Answer answer = record("X-1", headers);
            assertThat(answer.status()).as(String.join(" ", headers)).isEqualTo(403);
            assertThat(answer.words()).contains("Nothing was changed");
        }
        assertThat(wiring.archive().ledger().count(Kinds.PIECE)).isZero();

        for (String path :
                List.of("/photos", "/api/pieces", "/studio/pack", "/drafts/piece", "/print/issue", "/nowhere")) {
            assertThat(client.send("POST", path, new byte[0], "Origin", "http://evil.example")
                            .status())
                    .as(path)
                    .isEqualTo(403);
        }
    }

    @Test
    void ourOwnPagesAndPlainProgramsMayChange() throws IOException {
        assertThat(record("X-1", "Origin", "http://127.0.0.1:" + client.port()).status())
                .isEqualTo(303);
        assertThat(record("X-2").status()).as("a program without an Origin").isEqualTo(303);
        assertThat(record("X-3", "Sec-Fetch-Site", "same-origin").status()).isEqualTo(303);
        assertThat(record("X-4", "Host", "localhost:" + client.port(), "Origin", "http://localhost:" + client.port())
                        .status())
                .isEqualTo(303);
    }

    @Test
    void everyAnswerSaysWhatABrowserMayLoad() throws IOException {
        saved("/pieces", "number", "V24-001", "title", "Maré");
        for (String path : List.of(
                "/",
                "/pieces/V24-001",
                "/pieces/none",
                "/no-such-page",
                "/style/tenterbook.css",
                "/style/none.css",
                "/script/tenterbook.js",
                "/fonts/alegreya-latin-400-normal.woff2",
                "/webjars/htmx.org/2.0.10/dist/htmx.min.js",
                "/api/pieces",
                "/api/pieces/none",
                "/api/openapi.json",
                "/api/pieces?size=0",
                "/?dips=many",
                "/photos/00/small",
                "/print",
                "/pieces/%2e%2e/x",
                "/style/%2e%2e/openapi.json")) {
            Answer answer = client.get(path);
            assertThat(answer.header("Content-Security-Policy"))
                    .as("%s, %d", path, answer.status())
                    .contains("default-src 'none'")
                    .contains("script-src 'self'")
                    .doesNotContain("unsafe");
            assertThat(answer.header("X-Content-Type-Options")).as(path).isEqualTo("nosniff");
            assertThat(answer.header("Access-Control-Allow-Origin")).as(path).isEmpty();
            String type = answer.header("Content-Type").toLowerCase(Locale.ROOT).replace(" ", "");
            assertThat(type).as(path).isNotEmpty();
            if (type.startsWith("text/") || type.contains("xml")) {
                assertThat(type).as(path).endsWith(";charset=utf-8");
            }
        }
        Answer refused = client.get("/", "Host", "evil.example");
        assertThat(refused.header("Content-Security-Policy")).contains("default-src 'none'");
        Answer moved = client.post("/pieces", "number", "V24-002");
        assertThat(moved.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(moved.header("Set-Cookie")).contains("said=", "HttpOnly", "SameSite=Lax");
    }

    @Test
    void staticFilesAreServedFromTheirFoldersAlone() throws IOException {
        assertThat(client.get("/style/tenterbook.css").status()).isEqualTo(200);
        for (String path : List.of(
                "/style/../openapi.json",
                "/style/%2e%2e/openapi.json",
                "/style/..%2fopenapi.json",
                "/style/%252e%252e/openapi.json",
                "/style/..;/openapi.json",
                "/style/../../db/migration/V1__ledger.sql",
                "/style/%2e%2e/%2e%2e/db/migration/V1__ledger.sql",
                "/style/..%5c..%5cdb/migration/V1__ledger.sql",
                "/webjars/../../../db/migration/V1__ledger.sql",
                "/webjars/%2e%2e/%2e%2e/%2e%2e/db/migration/V1__ledger.sql",
                "/openapi.json",
                "/web/openapi.json",
                "/ledger.db",
                "/style/",
                "/script",
                "/photos/..%2f..%2fledger.db/original")) {
            Answer answer = client.get(path);
            assertThat(answer.status()).as(path).isBetween(400, 499);
            assertThat(answer.text()).as(path).doesNotContain("\"openapi\"").doesNotContain("CREATE TABLE");
        }
    }
}
