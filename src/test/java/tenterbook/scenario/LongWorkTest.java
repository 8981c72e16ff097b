package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Archive;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.exchange.Restore;
import tenterbook.ledger.file.Progress;

/** Checking, re-indexing and packing while the program goes on. */
class LongWorkTest extends Scenario {
    @BeforeEach
    void fill() throws IOException {
        studio();
        clamping();
        String digest = client.postFiles("/photos", List.of(new Client.Part("files", "a.jpg", Pictures.jpeg(1))))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        saved("/pieces", "number", "V24-001", "title", "Figueira", "photos.0.photo", digest, "photos.0.state", "1");
    }

    /** Starts work and looks at it until it is over, as the page does. */
    private String worked(String path) throws IOException {
        return over(saved(path));
    }

    @Test
    void aCheckOfAWholeArchiveFindsNothing() throws IOException {
        assertThat(worked("/studio/check")).contains("Nothing is wrong");
        assertThat(client.get("/work/1").words()).contains("Nothing is wrong").contains("Checking the archive");
    }

    @Test
    void aCheckTellsWhichPhotographIsDamaged() throws IOException {
        Path photo = photos().get(0);
        byte[] bytes = Files.readAllBytes(photo);
        bytes[bytes.length / 2] ^= 1;
        Files.write(photo, bytes);
        assertThat(worked("/studio/check"))
                .contains("wrong")
                .contains(photo.getFileName().toString().substring(0, 8));
    }

    private List<Path> photos() throws IOException {
        try (Stream<Path> files = Files.walk(wiring.archive().folder().photos())) {
            return files.filter(Files::isRegularFile).toList();
        }
    }

    @Test
    void theIndexIsBuiltAnewWhilePiecesAreSaved() throws IOException {
        String work = saved("/studio/reindex");
        saved("/pieces", "number", "V24-002", "title", "Saved meanwhile");
        assertThat(over(work)).contains("built anew");
        assertThat(client.get("/?q=meanwhile").words()).contains("V24-002");
        assertThat(client.get("/?q=figueira").words()).contains("V24-001");
    }

    @Test
    void aPackedArchiveIsRestoredWhole() throws IOException {
        String said = worked("/studio/pack");
        Path bag = around.resolve("studio-2024-09-30");
        assertThat(said).contains(bag.toString());
        assertThat(worked("/studio/pack")).as("a second one takes another name").contains(bag + "-2");
        Path restored = around.resolve("restored");
        new Restore(CLOCK).restore(bag, restored, Progress.UNWATCHED);
        try (Archive archive = Archive.open(restored, CLOCK)) {
            assertThat(archive.piece("V24-001").orElseThrow().title()).isEqualTo("Figueira");
            assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
            assertThat(archive.ledger().lastHash())
                    .isEqualTo(wiring.archive().ledger().lastHash());
        }
    }

    @Test
    void workThatWaitsIsStoppedWhenAsked() throws IOException {
        // Work goes one after another, so the last of several still waits when it is told to stop.
        String last = "";
        for (int i = 0; i < 12; i++) {
            last = saved("/studio/reindex");
        }
        Answer answer = client.post(last + "/stop");
        assertThat(answer.location()).isEqualTo(last);
        assertThat(over(last)).doesNotContain("built anew").containsIgnoringCase("stopped");
        assertThat(client.get("/?q=figueira").words()).contains("V24-001");
    }

    @Test
    void workThatIsNotThereIsNotFound() throws IOException {
        assertThat(client.get("/work/99").status()).isEqualTo(404);
        assertThat(client.post("/work/99/stop").status()).isEqualTo(404);
    }
}
