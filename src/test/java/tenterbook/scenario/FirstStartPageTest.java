package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.web.server.FirstStartPage;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

class FirstStartPageTest {
    @TempDir
    Path home;

    private final List<String> made = new ArrayList<>();
    private final CountDownLatch ended = new CountDownLatch(1);
    private FirstStartPage page;
    private Client client;

    @BeforeEach
    void show() {
        page = FirstStartPage.show(
                home.resolve("archive"),
                Message.of("first-start.gone", "folder", "/media/disk"),
                (folder, beginning) -> {
                    if (folder.isEmpty()) {
                        throw Refusal.of("first-start.not-a-folder", "typed", folder, "example", "/home");
                    }
                    made.add(beginning + " " + folder);
                    return "http://127.0.0.1:1";
                },
                ended::countDown);
        client = new Client(URI.create(page.address()).getPort());
    }

    @AfterEach
    void close() {
        page.close();
    }

    @Test
    void itShowsThePlaceAndWhyItAsksAndCreatesNothing() throws IOException {
        Answer answer = client.get("/");
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.field("folder")).isEqualTo(home.resolve("archive").toString());
        assertThat(answer.words())
                .contains("Nothing is created until you press")
                .contains("not in its folder /media/disk");
        assertThat(client.get("/", "Accept-Language", "pt").words()).contains("Nada é criado antes");
        assertThat(answer.header("Content-Security-Policy")).contains("default-src 'none'");
        assertThat(home).isEmptyDirectory();
        assertThat(made).isEmpty();
    }

    @Test
    void theChoiceIsMadeOnceAndLeadsToTheArchive() throws IOException {
        Answer refused = client.post("/", "folder", " ", "beginning", "sample");
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("A folder was expected as a whole path");
        assertThat(refused.text()).containsPattern("value=\"sample\" checked");
        Answer done = client.post("/", "folder", "/data/archive", "beginning", "sample");
        assertThat(done.text()).contains("href=\"http://127.0.0.1:1\"", "0; url=http://127.0.0.1:1");
        client.post("/", "folder", "/data/other", "beginning", "empty");
        assertThat(made).containsExactly("SAMPLE /data/archive");
        assertThat(client.get("/").header("Location")).isEqualTo("http://127.0.0.1:1");
    }

    @Test
    void anotherPageOrNameIsTurnedAwayAndTheButtonEndsTheProgram() throws Exception {
        byte[] form = Client.form("folder", "/data/archive").getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        String[] type = {"Content-Type", "application/x-www-form-urlencoded"};
        assertThat(client.send("POST", "/", form, type[0], type[1], "Origin", "http://evil.example")
                        .status())
                .isEqualTo(403);
        assertThat(client.send("POST", "/studio/close", new byte[0], "Sec-Fetch-Site", "cross-site")
                        .status())
                .isEqualTo(403);
        assertThat(client.get("/", "Host", "evil.example").status()).isEqualTo(421);
        assertThat(made).isEmpty();
        assertThat(client.post("/studio/close").words()).contains("Tenterbook is closed");
        assertThat(ended.await(10, TimeUnit.SECONDS)).isTrue();
    }
}
