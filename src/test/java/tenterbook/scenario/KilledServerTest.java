package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.Thorough;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.ArchiveCheck;
import tenterbook.imaging.Originals;
import tenterbook.labelling.issue.TagTable;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.piece.Piece;
import tenterbook.search.PieceIndex;
import tenterbook.web.piece.TagFacet;

/**
 * What was acknowledged survives a killed process: the server is killed at random moments while two clients save pieces and
 * upload photographs, several times over on one folder. A killed process is not a loss of power: that rests on the disk
 * honouring a sync, which this test cannot see.
 */
class KilledServerTest {
    private static final int ROUNDS = Thorough.times(3, 50);

    @TempDir
    Path around;

    /** Titles by number, photographs by digest: what a client sent, and of that what the server answered for. */
    private final Map<String, String> sentPieces = new ConcurrentHashMap<>();

    private final Map<String, String> savedPieces = new ConcurrentHashMap<>();
    private final Map<String, String> savedPhotoOf = new ConcurrentHashMap<>();
    private final Set<String> sentPhotos = ConcurrentHashMap.newKeySet();
    private final Set<String> savedPhotos = ConcurrentHashMap.newKeySet();
    private final AtomicInteger answered = new AtomicInteger();

    /** Saves and uploads until the connection breaks; any answer but the right one is a fault of the server. */
    private void work(Client client, int round, int worker, List<String> faults) {
        try {
            for (int i = 0; ; i++) {
                String number = "K%d%d-%03d".formatted(round, worker, i);
                String title = "Round " + round + ", piece " + i;
                sentPieces.put(number, title);
                expect(303, client.post("/pieces", "number", number, "title", title), faults);
                savedPieces.put(number, title);

                byte[] jpeg = Pictures.jpeg(1 + round * 4000 + worker * 2000 + i);
                String digest = Digest.of(jpeg).hex();
                sentPhotos.add(digest);
                expect(200, client.postFiles("/photos", List.of(new Client.Part("files", "a.jpg", jpeg))), faults);
                savedPhotos.add(digest);

                Answer edit = client.post(
                        "/pieces/" + number + "/edit",
                        "version",
                        "1",
                        "title",
                        title,
                        "photos.0.photo",
                        digest,
                        "photos.0.state",
                        "1");
                expect(303, edit, faults);
                savedPhotoOf.put(number, digest);

                expect(201, client.postJson("/api/pieces", "{\"title\": \"by program\"}"), faults);
            }
        } catch (IOException | NumberFormatException | IndexOutOfBoundsException e) {
            // The process was killed, perhaps in the middle of an answer, which then was none.
        }
    }

    private void expect(int status, Answer answer, List<String> faults) throws IOException {
        if (answer.status() != status) {
            faults.add(answer.status() + ": " + answer.words());
            throw new IOException("not acknowledged");
        }
        answered.incrementAndGet();
    }

    @Test
    void whatWasAcknowledgedIsThereAfterEveryKillAndNothingIsHalf() throws Exception {
        Path studio = around.resolve("studio");
        Random random = new Random();
        for (int round = 1; round <= ROUNDS; round++) {
            List<String> faults = java.util.Collections.synchronizedList(new ArrayList<>());
            try (ServedChild child = ServedChild.start(studio, 0)) {
                Client client = child.client();
                List<Thread> workers = new ArrayList<>();
                for (int worker = 0; worker < 2; worker++) {
                    int which = worker;
                    int now = round;
                    Thread thread = new Thread(() -> work(client, now, which, faults));
                    thread.start();
                    workers.add(thread);
                }
                // So many answers, whatever the speed of the machine, and then a moment more: the kill falls anywhere.
                int enough = answered.get() + random.nextInt(10, 40);
                long until = System.nanoTime() + 120_000_000_000L;
                while (answered.get() < enough && faults.isEmpty() && System.nanoTime() < until) {
                    Thread.sleep(2);
                }
                Thread.sleep(random.nextLong(0, 120));
                child.kill();
                for (Thread thread : workers) {
                    thread.join();
                }
            }
            assertThat(faults).isEmpty();
            check(studio, round);
        }
        assertThat(savedPieces).as("the test did something").hasSizeGreaterThan(2 * ROUNDS);
        assertThat(savedPhotos).hasSizeGreaterThan(ROUNDS);
    }

    private void check(Path studio, int round) throws IOException {
        try (Archive archive = Archive.open(studio, Scenario.CLOCK)) {
            Originals originals = new Originals(archive.folder().photos());
            savedPieces.forEach((number, title) -> assertThat(archive.piece(number))
                    .as("acknowledged piece %s in round %d", number, round)
                    .get()
                    .extracting(Piece::title)
                    .isEqualTo(title));
            savedPhotoOf.forEach((number, digest) -> assertThat(
                            archive.piece(number).orElseThrow().photos())
                    .as("acknowledged photograph of %s", number)
                    .anyMatch(photo -> photo.photo().hex().equals(digest)));
            for (String digest : savedPhotos) {
                assertThat(archive.ledger().find(Kinds.PHOTO, digest)).isPresent();
                assertThat(originals.verify(new Digest(digest))).isEqualTo(HashedFiles.Check.GOOD);
            }
            nothingHalf(archive, round);
            assertThat(unexpected(ArchiveCheck.run(archive, Progress.UNWATCHED)))
                    .isEmpty();
            try (TagTable tags = TagTable.open(archive);
                    PieceIndex index = PieceIndex.open(archive, new TagFacet(tags))) {
                assertThat(tags.check(Progress.UNWATCHED)).isEmpty();
                assertThat(index.check(Progress.UNWATCHED)).isEmpty();
            }
        }
    }

    /** A piece that nobody was told of is whole all the same, and there is at most one of each client and kill. */
    private void nothingHalf(Archive archive, int round) {
        Set<String> unanswered = archive.ledger().all(Kinds.PIECE).stream()
                .map(saved -> saved.record())
                .filter(piece -> piece.number().value().startsWith("K"))
                .filter(piece -> !savedPieces.containsKey(piece.number().value()))
                .peek(piece -> assertThat(piece.title())
                        .isEqualTo(sentPieces.get(piece.number().value())))
                .map(piece -> piece.number().value())
                .collect(Collectors.toSet());
        assertThat(unanswered).hasSizeLessThanOrEqualTo(2 * round);
    }

    /**
     * An original that no record names may be left where the process was killed between keeping the file and writing its
     * record. That order is meant: the other way round a record would name a file that is not there. The check tells of
     * such a file and it does no harm, so it is expected here, but only for a photograph that was never acknowledged.
     */
    private List<Finding> unexpected(List<Finding> findings) {
        return findings.stream()
                .filter(finding -> sentPhotos.stream()
                        .filter(digest -> !savedPhotos.contains(digest))
                        .noneMatch(digest -> finding.where().contains(digest)
                                && finding.what().contains("no record names")))
                .toList();
    }
}
