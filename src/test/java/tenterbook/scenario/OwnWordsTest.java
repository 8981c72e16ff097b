package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.exchange.Pack;
import tenterbook.exchange.Restore;
import tenterbook.ledger.file.Progress;

/** The maker's own words: put down on a page or over HTTP, read by questions, packed with the archive. */
class OwnWordsTest {
    @TempDir
    Path folder;

    private static Answer put(Client client, String json) throws IOException {
        return client.send(
                "PUT", "/api/own-words", json.getBytes(StandardCharsets.UTF_8), "Content-Type", "application/json");
    }

    @Test
    void aWordPutDownIsReadByTheNextQuestion() throws IOException {
        try (SampleStudio studio = SampleStudio.open(folder, Clock.systemUTC())) {
            Client client = new Client(studio.wiring().port());
            assertThat(client.get("/api/pieces?q=moongate").json().get("total").intValue())
                    .isZero();
            Answer saved = client.post(
                    "/words",
                    "words.0.word",
                    "moongate",
                    "words.0.means",
                    "B06 state II",
                    "words.1.word",
                    "",
                    "words.1.means",
                    "");
            assertThat(saved.status()).isEqualTo(303);
            assertThat(client.get("/api/pieces?q=moongate").json().get("total").intValue())
                    .isEqualTo(3);
            assertThat(client.get("/words").text())
                    .contains("value=\"moongate\"", "Read as: Board: B06, state II.", "kyokechi", "common practice");
            assertThat(client.get("/?q=moongate").text()).contains("href=\"/words\"");
        }
    }

    /** Of the sample's 23 pieces 15 are of woad, three of those with more than ten dips, and each of the 15 has a count. */
    @Test
    void notAnOwnWordFindsAllThatTheWordItselfDoesNot() throws IOException {
        try (SampleStudio studio = SampleStudio.open(folder, Clock.systemUTC())) {
            Client client = new Client(studio.wiring().port());
            put(client, "{\"words\": [{\"word\": \"night blue\", \"means\": \"woad more than ten dips\"}]}");
            assertThat(client.get("/api/pieces?q=night+blue")
                            .json()
                            .get("total")
                            .intValue())
                    .isEqualTo(3);
            assertThat(client.get("/api/pieces?q=not+night+blue")
                            .json()
                            .get("total")
                            .intValue())
                    .isEqualTo(20);
            assertThat(client.get("/?q=not+night+blue").text()).contains("not all of these: Dye: woad, Dips: over 10");
            assertThat(client.get("/?q=indigo").text())
                    .contains("Dye: woad, which gives the same dye from another plant", "href=\"/?q=woad\"");
        }
    }

    @Test
    void halfARowOrAWordTwiceIsRefusedAndNothingIsLost() throws IOException {
        try (SampleStudio studio = SampleStudio.open(folder, Clock.systemUTC())) {
            Client client = new Client(studio.wiring().port());
            assertThat(put(client, "{\"words\": [{\"word\": \"moongate\", \"means\": \"B06\"}]}")
                            .status())
                    .isEqualTo(200);
            Answer half = client.post(
                    "/words",
                    "words.0.word",
                    "old chest",
                    "words.0.means",
                    "",
                    "words.1.word",
                    "OLD CHEST",
                    "words.1.means",
                    "flat drawer");
            assertThat(half.status()).isEqualTo(422);
            assertThat(half.text())
                    .contains("What ‘old chest’ means was expected", "‘OLD CHEST’ stands twice")
                    .contains("value=\"flat drawer\"");
            Answer refused = put(client, "{\"words\": [{\"word\": \"moongate\"}]}");
            assertThat(refused.status()).isEqualTo(400);
            assertThat(refused.json().get("error").textValue()).contains("each with the texts ‘word’ and ‘means’");
            assertThat(client.get("/api/own-words").json().toString())
                    .isEqualTo("{\"words\":[{\"word\":\"moongate\",\"means\":\"B06\"}]}");
        }
    }

    @Test
    void ownWordsArePackedAndRestoredAndMakeNoRevision() throws IOException {
        try (SampleStudio studio = SampleStudio.open(folder, Clock.systemUTC())) {
            var archive = studio.wiring().archive();
            long before = archive.ledger().lastSequence();
            archive.ledger().ownWords().replace(Map.of("moongate", "B06 state II"));
            assertThat(archive.ledger().lastSequence()).isEqualTo(before);
            new Pack(Clock.systemUTC()).pack(archive, folder.resolve("bag"), Progress.UNWATCHED);
        }
        new Restore(Clock.systemUTC()).restore(folder.resolve("bag"), folder.resolve("again"), Progress.UNWATCHED);
        try (var again = tenterbook.archive.Archive.open(folder.resolve("again"), Clock.systemUTC())) {
            assertThat(again.ledger().ownWords().means()).containsExactly(Map.entry("moongate", "B06 state II"));
        }
    }
}
