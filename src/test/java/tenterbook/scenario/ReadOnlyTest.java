package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.app.Wiring;
import tenterbook.archive.Archive;
import tenterbook.exchange.RestoredSample;
import tenterbook.measure.Digest;

/** An archive that is served for looking only: all of it can be seen, and nothing in its folder is changed. */
class ReadOnlyTest {
    @TempDir
    Path around;

    /** Every file and folder with its contents and when it was last changed. */
    private static Map<String, String> state(Path folder) throws IOException {
        Map<String, String> state = new TreeMap<>();
        try (Stream<Path> paths = Files.walk(folder)) {
            for (Path path : paths.toList()) {
                FileTime changed = Files.getLastModifiedTime(path);
                state.put(
                        folder.relativize(path).toString(),
                        Files.isDirectory(path) ? changed + "" : changed + " " + Digest.of(Files.readAllBytes(path)));
            }
        }
        return state;
    }

    @Test
    void everythingIsLookedAtAndPackedAndNothingIsWritten() throws Exception {
        Path studio = around.resolve("studio");
        RestoredSample.copyTo(studio);
        Map<String, String> before = state(studio);
        Archive archive = Archive.lookThrough(studio, Clock.systemUTC());
        Path work = archive.folder().index().getParent();
        try (Wiring wiring = Wiring.serve(archive, 0)) {
            Client client = new Client(wiring.port());
            String first = client.get("/").text();
            assertThat(first).contains("Read only.", "class=\"read-only\"").doesNotContain("href=\"/pieces/new\"");
            String digest = archive.piece("V24-007")
                    .orElseThrow()
                    .photos()
                    .get(0)
                    .photo()
                    .hex();
            for (String path : new String[] {
                "/pieces/V24-007",
                "/today",
                "/studio",
                "/clampings",
                "/people",
                "/photos/waiting",
                "/import",
                "/searches",
                "/photos/" + digest + "/small",
                "/?q=linen+six+dips",
                "/api/pieces/V24-007",
                "/print?pieces=V24-007"
            }) {
                assertThat(client.get(path).status()).as(path).isEqualTo(200);
            }
            assertThat(client.get("/?q=linen+six+dips").text()).contains("/pieces/V");
            Answer page = client.post("/pieces/V24-007/withdraw", "why", "");
            assertThat(page.status()).isEqualTo(403);
            assertThat(page.words()).contains("open for reading only").contains("nothing was saved");
            assertThat(client.get("/pieces/new").status()).isEqualTo(403);
            assertThat(client.get("/pieces/V24-007/edit").status()).isEqualTo(403);
            Answer api = client.postJson("/api/pieces", "{\"title\": \"by program\"}");
            assertThat(api.status()).isEqualTo(403);
            assertThat(api.text()).startsWith("{\"error\":\"This archive is open for reading only");
            assertThat(client.send("PUT", "/api/own-words", "[]".getBytes(), "Content-Type", "application/json")
                            .status())
                    .isEqualTo(403);
            assertThat(client.post("/language", "language", "pt").status()).isLessThan(400);
            Answer packed = client.post("/studio/pack");
            assertThat(packed.status()).isEqualTo(303);
            while (client.get(packed.location(), "HX-Request", "true").text().contains("<progress")) {
                Thread.sleep(50);
            }
        }
        assertThat(state(studio)).isEqualTo(before);
        assertThat(work).as("what was made meanwhile").doesNotExist();
        try (Stream<Path> bags = Files.list(around)) {
            Path bag = bags.filter(path -> path.getFileName().toString().startsWith("studio-"))
                    .findFirst()
                    .orElseThrow();
            assertThat(bag.resolve("bagit.txt")).exists();
        }
    }
}
