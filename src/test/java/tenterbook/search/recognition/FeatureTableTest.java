package tenterbook.search.recognition;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.arrival.PhotoRegistration;
import tenterbook.imaging.Originals;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoIntake;
import tenterbook.imaging.Previews;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.piece.Status;
import tenterbook.sample.RecognitionScene;
import tenterbook.search.Demo;
import tenterbook.search.recognition.Recognition.Level;

class FeatureTableTest {
    @TempDir
    Path folder;

    private Archive archive;
    private PhotoRegistration photos;
    private Recogniser recogniser;
    private Digest ofPiece;
    private Digest waiting;

    @BeforeEach
    void begin() throws IOException {
        archive = Demo.archive(folder.resolve("archive"));
        Originals originals = new Originals(archive.folder().photos());
        photos = new PhotoRegistration(
                archive,
                new PhotoIntake(originals, new Previews(archive.folder().previews(), originals), archive.cloths()));
        recogniser = Recogniser.open(archive);
        ofPiece = taken(1);
        Demo.save(archive, Kinds.BOARD_PAIR, Demo.board("B03", "Nine swifts", "wild cherry", "I"));
        Demo.save(archive, Kinds.CLOTH, Demo.cloth("SO", "silk organza", "silk"));
        Demo.save(archive, Kinds.CLAMPING, Demo.clamping("C24-008", "B03", "I", "SO", "6", ""));
        Photo photo = photos.find(ofPiece).orElseThrow();
        Demo.save(
                archive,
                Kinds.PIECE,
                Demo.piece("V24-008", "Dusk swifts", "C24-008", Status.IN_STOCK, "2024-03-01")
                        .withPhotos(List.of(Demo.front(photo, "", 1))));
        waiting = taken(2);
    }

    @AfterEach
    void end() {
        recogniser.close();
        archive.close();
    }

    private Digest taken(long seed) throws IOException {
        byte[] bytes = RenderedSet.jpeg(
                RecognitionScene.other("V24-008", false, seed).small().take(), 0.9f);
        return photos.take(new ByteArrayInputStream(bytes), seed + ".jpg").digest();
    }

    private Recognition askedWhenAllWereLookedAt() throws InterruptedException {
        Optional<Recognition> answer = recogniser.recognise(waiting, Progress.UNWATCHED);
        Instant late = Instant.now().plus(Duration.ofSeconds(60));
        while ((answer.isEmpty() || recogniser.waiting() > 0) && Instant.now().isBefore(late)) {
            Thread.sleep(20);
            answer = recogniser.recognise(waiting, Progress.UNWATCHED);
        }
        return recogniser.recognise(waiting, Progress.UNWATCHED).orElseThrow();
    }

    @Test
    void aPhotographThatWaitsIsPutToItsPieceAlsoAfterTheTableWasLostOrDamaged() throws Exception {
        Recognition answer = askedWhenAllWereLookedAt();
        assertThat(answer.level()).isEqualTo(Level.THIS_PIECE);
        assertThat(answer.pieces()).hasSize(1);
        assertThat(answer.pieces().get(0).piece().value()).isEqualTo("V24-008");
        assertThat(answer.pieces().get(0).photo()).isEqualTo(ofPiece);
        assertThat(answer.boards().get(0).board().state()).isEqualTo("I");

        Path table = archive.folder().derived().resolve("features.db");
        recogniser.close();
        Files.delete(table);
        recogniser = Recogniser.open(archive);
        assertThat(askedWhenAllWereLookedAt()).isEqualTo(answer);

        recogniser.close();
        Files.writeString(table, "no table at all, but long enough to be taken for the head of one ".repeat(20));
        recogniser = Recogniser.open(archive);
        assertThat(recogniser.waiting()).isEqualTo(2);
        assertThat(askedWhenAllWereLookedAt()).isEqualTo(answer);

        recogniser.close();
        recogniser = Recogniser.open(archive);
        assertThat(recogniser.waiting())
                .as("what is kept is not looked at again")
                .isZero();
        assertThat(askedWhenAllWereLookedAt()).isEqualTo(answer);
    }

    @Test
    void aPieceThatWasWithdrawnIsNotNamed() throws Exception {
        askedWhenAllWereLookedAt();
        Demo.withdraw(archive, Kinds.PIECE, "V24-008");
        assertThat(askedWhenAllWereLookedAt().level()).isEqualTo(Level.UNKNOWN);
    }
}
