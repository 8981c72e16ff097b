package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.RestoredSample;
import tenterbook.imaging.LookingBehind;
import tenterbook.imaging.Photo;
import tenterbook.imaging.SeenCloth;
import tenterbook.ledger.Saved;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.search.PieceIndex;
import tenterbook.search.index.OutsideFacets;
import tenterbook.search.query.PieceQuery;

/** The cloth on photographs is looked for behind, so that nobody waits for it; whoever is to know of it does, also after a kill. */
class ClothBehindTest {
    @TempDir
    Path empty;

    private Path withoutOutlines() throws IOException {
        Path folder = empty.resolve("studio");
        RestoredSample.copyTo(folder);
        for (String end : new String[] {"", "-wal", "-shm"}) {
            Files.deleteIfExists(folder.resolve("derived/cloth.db" + end));
        }
        return folder;
    }

    @Test
    void piecesAreFoundBeforeTheirColoursAndTheIndexHasThemAfterwards() throws IOException {
        try (Archive archive = Archive.open(withoutOutlines(), Clock.systemUTC());
                PieceIndex index = PieceIndex.open(archive, OutsideFacets.NONE)) {
            assertThat(index.search(PieceQuery.EVERYTHING).total()).isEqualTo(23);
            assertThat(archive.cloths().looking())
                    .as("whether the search waited")
                    .isTrue();
            LookingBehind.Looking far = archive.cloths().progress();
            assertThat(far.all()).isBetween(1, 69);
            assertThat(far.done()).isLessThan(far.all());

            assertThat(index.await(Duration.ofMinutes(2))).isTrue();
            assertThat(archive.cloths().looking()).isFalse();
            assertThat(archive.cloths().progress()).isEqualTo(new LookingBehind.Looking(0, 0));
            assertThat(index.check(Progress.UNWATCHED)).isEmpty();
        }
    }

    @Test
    void whatWasNotTakenOverIsHeardOfAgainAfterTheNextStart() throws Exception {
        Path folder = withoutOutlines();
        Photo photo;
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            photo = archive.ledger().all(Kinds.PHOTO).stream()
                    .map(Saved::record)
                    .filter(Photo::viewable)
                    .findFirst()
                    .orElseThrow();
            CountDownLatch heard = new CountDownLatch(1);
            archive.cloths().follow(found -> heard.countDown());
            assertThat(archive.cloths().known(Set.of(photo)).get(photo.digest()))
                    .isEqualTo(SeenCloth.NOT_YET);
            assertThat(heard.await(1, TimeUnit.MINUTES)).isTrue();
            assertThat(archive.cloths().known(Set.of(photo)).get(photo.digest()))
                    .isNotEqualTo(SeenCloth.NOT_YET);
        }
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            Set<Digest> again = new HashSet<>();
            CountDownLatch heard = new CountDownLatch(1);
            archive.cloths().follow(found -> {
                again.addAll(found);
                heard.countDown();
            });
            assertThat(heard.await(1, TimeUnit.MINUTES)).isTrue();
            assertThat(again).containsExactly(photo.digest());
            archive.cloths().taken(again);
        }
        try (Archive archive = Archive.open(folder, Clock.systemUTC())) {
            CountDownLatch heard = new CountDownLatch(1);
            archive.cloths().follow(found -> heard.countDown());
            assertThat(heard.await(500, TimeUnit.MILLISECONDS)).as("taken over").isFalse();
        }
    }
}
