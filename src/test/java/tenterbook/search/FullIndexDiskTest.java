package tenterbook.search;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.search.Demo.find;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.FSDirectory;
import org.apache.lucene.store.FilterDirectory;
import org.apache.lucene.store.IOContext;
import org.apache.lucene.store.IndexOutput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.Progress;
import tenterbook.piece.Status;
import tenterbook.search.index.OutsideFacets;

/** A disk that has no room for the index for a while, though it has for the ledger. */
class FullIndexDiskTest {
    @TempDir
    Path folder;

    private volatile boolean full;
    /** How often a file could not be made since the disk is full. */
    private final CountDownLatch refused = new CountDownLatch(2);

    private Directory opened(Path path) throws IOException {
        return new FilterDirectory(FSDirectory.open(path)) {
            @Override
            public IndexOutput createOutput(String name, IOContext context) throws IOException {
                if (full) {
                    refused.countDown();
                    throw new IOException("No space left on device");
                }
                return super.createOutput(name, context);
            }
        };
    }

    @Test
    void whatWasSavedWhileTheDiskWasFullIsFoundOnceThereIsRoomWithoutAnotherWriteOrARestart() throws Exception {
        try (Archive archive = Demo.archive(folder);
                PieceIndex index =
                        PieceIndex.open(archive, OutsideFacets.NONE, Demo.CLOCK, this::opened, Duration.ofMillis(1))) {
            Demo.fill(archive);
            assertThat(find(index, "heron")).hasSize(2);
            full = true;
            Demo.save(archive, Kinds.PIECE, Demo.piece("V24-091", "Meanwhile", null, Status.KEPT, "2024"));
            assertThat(refused.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(find(index, "heron")).as("searches go on").hasSize(2);
            assertThat(find(index, "meanwhile")).isEmpty();
            full = false;
            // Only the program's own tries can find it: nothing is written any more.
            while (index.sequence() < archive.ledger().lastSequence()) {
                index.await(Duration.ofSeconds(10));
                Thread.onSpinWait();
            }
            assertThat(find(index, "meanwhile")).containsExactly("V24-091");
            assertThat(index.check(Progress.UNWATCHED)).isEmpty();
        }
    }
}
