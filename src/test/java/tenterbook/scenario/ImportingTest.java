package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.app.Wiring;

/** A sheet brought in through its pages, and taken back. */
class ImportingTest {
    @TempDir
    Path folder;

    private static String done(Client client, Answer answer) throws IOException {
        assertThat(answer.status()).as(answer.text()).isEqualTo(303);
        String work = answer.location();
        for (int i = 0; i < 600; i++) {
            String page = client.get(work).text();
            if (!page.contains("<progress")) {
                return page;
            }
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
        throw new AssertionError("The work did not end");
    }

    @Test
    void aSheetIsLookedAtBroughtInAndTakenBack() throws IOException {
        try (Wiring wiring = Wiring.serve(folder.resolve("studio"), 0, Clock.systemUTC())) {
            Client client = new Client(wiring.port());
            assertThat(client.get("/studio").text()).contains("href=\"/import\"");
            byte[] sheet =
                    "No,Title,Made\nV1,Tide,2024-03-05\nV2,<b>Reeds</b>,\n,lost,\n".getBytes(StandardCharsets.UTF_8);
            Answer sent =
                    client.postFiles("/import", List.of(new Client.Part("file", "list.csv", sheet)), "kind", "pieces");
            assertThat(sent.status()).as(sent.text()).isEqualTo(303);
            String at = sent.location();
            assertThat(client.get(at).text()).contains("list.csv", "value=\"number\" selected", "not brought in");
            String[] columns = {"field.0", "number", "field.1", "title", "field.2", "finished", "above.2", "1"};
            assertThat(client.post(at, "field.0", "", "field.1", "title").status())
                    .isEqualTo(422);
            assertThat(done(client, client.post(at, columns))).contains("2 new", "1 refused");
            assertThat(wiring.archive().piece("V1")).isEmpty();
            assertThat(client.get(at + "/rows").text()).contains("V2", "its cell is empty", "Bring it in");
            assertThat(client.get(at + "/rows?show=refused").text()).doesNotContain("V2");
            assertThat(client.get(at).text()).contains("As you chose them");
            assertThat(done(client, client.post(at + "/write"))).contains("Brought in: 2 new");
            assertThat(wiring.archive().piece("V2").orElseThrow().finished().entered())
                    .isEqualTo("2024-03-05");
            assertThat(client.get("/import").text()).contains("Take it back");
            whoIsNewIsChosenWhereItIsSeen(client);
            assertThat(client.get("/sheets/pieces.csv").text()).contains("V1,Tide");
            assertThat(client.get("/sheets/people.csv").status()).isGreaterThanOrEqualTo(400);
            assertThat(client.get("/sheets/template.xlsx").status()).isEqualTo(200);
            assertThat(done(client, client.post(at + "/undo"))).contains("Taken back: 2 withdrawn");
            assertThat(client.get("/import").text()).contains("Taken back").doesNotContain("Take it back");
            assertThat(client.post(at + "/undo").location())
                    .as("once is enough")
                    .isEqualTo("/import");
            assertThat(wiring.archive().piece("V1")).isEmpty();
        }
    }

    private static void whoIsNewIsChosenWhereItIsSeen(Client client) throws IOException {
        byte[] sheet = "piece,buyer,date\nV1,Ana Quental,2024-05-01\n".getBytes(StandardCharsets.UTF_8);
        String at = client.postFiles("/import", List.of(new Client.Part("file", "sold.csv", sheet)), "kind", "sales")
                .location();
        assertThat(client.get(at).text()).containsPattern("(?s)name=\"field.1\".*name=\"people\".*name=\"field.2\"");
        assertThat(done(client, client.post(at, "field.0", "piece", "field.1", "party", "field.2", "when")))
                .contains("1 refused");
        assertThat(client.get(at + "/rows").text())
                .contains("Choose ‘record a new person’", "Instead: record a new person");
        assertThat(done(client, client.post(at + "/people", "people", "new"))).contains("1 changing");
        assertThat(client.get(at + "/rows").text()).contains("Instead: refuse the row");
        client.post(at + "/discard");
    }

    @Test
    void whatIsNoSheetIsRefusedWithASentence() throws IOException {
        try (Wiring wiring = Wiring.serve(folder.resolve("studio"), 0, Clock.systemUTC())) {
            Client client = new Client(wiring.port());
            Answer sent = client.postFiles(
                    "/import", List.of(new Client.Part("file", "x.bin", new byte[] {0, 1, 2})), "kind", "pieces");
            assertThat(sent.status()).isEqualTo(422);
            assertThat(sent.text()).contains("none of them");
            assertThat(client.get("/import/1").status()).isEqualTo(404);
        }
    }
}
