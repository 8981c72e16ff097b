package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.ledger.Things.Board;
import tenterbook.ledger.Things.Opened;

@Timeout(60)
class LedgerThreadsTest {
    @TempDir
    Path root;

    @Test
    void readersAreNotHeldUpByALongWriteAndSeeTheStateBeforeIt() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try (Opened opened = new Opened(root)) {
            opened.board("B01", "Fig");
            CountDownLatch written = new CountDownLatch(1);
            CountDownLatch read = new CountDownLatch(1);
            Future<Boolean> writer = threads.submit(() -> opened.ledger.write("test", act -> {
                act.save(Things.BOARD, new Board("B01", "Heron"), 1, "");
                written.countDown();
                try {
                    // The act ends only once the reader has read: were readers held up, this would time out.
                    return read.await(20, TimeUnit.SECONDS);
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
            }));
            assertThat(written.await(20, TimeUnit.SECONDS)).isTrue();
            Future<Board> reader = threads.submit(
                    () -> opened.ledger.find(Things.BOARD, "B01").orElseThrow().record());

            assertThat(reader.get(15, TimeUnit.SECONDS).image()).isEqualTo("Fig");
            read.countDown();
            assertThat(writer.get(20, TimeUnit.SECONDS)).isTrue();
            assertThat(opened.ledger
                            .find(Things.BOARD, "B01")
                            .orElseThrow()
                            .record()
                            .image())
                    .isEqualTo("Heron");
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void writersTakeTurnsAndTheChainStaysWhole() throws Exception {
        int writers = 4;
        int acts = 25;
        ExecutorService threads = Executors.newFixedThreadPool(writers);
        try (Opened opened = new Opened(root)) {
            List<Future<?>> running = new ArrayList<>();
            for (int w = 0; w < writers; w++) {
                running.add(threads.submit(() -> {
                    for (int n = 0; n < acts; n++) {
                        opened.ledger.write("test", act -> {
                            // The next free number is looked up inside the act, so no two writers find the same one.
                            String id = "B%03d"
                                    .formatted(act.idsEverUsed(Things.BOARD, "").size() + 1);
                            return act.create(Things.BOARD, new Board(id, "Fig"));
                        });
                    }
                    return null;
                }));
            }
            for (Future<?> each : running) {
                each.get(50, TimeUnit.SECONDS);
            }

            assertThat(opened.ledger.lastSequence()).isEqualTo(writers * acts);
            assertThat(opened.ledger.allIdsEverUsed(Things.BOARD))
                    .hasSize(writers * acts)
                    .doesNotHaveDuplicates();
            assertThat(opened.check()).isEmpty();
        } finally {
            threads.shutdownNow();
        }
    }
}
