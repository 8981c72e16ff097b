package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.Thorough;
import tenterbook.ledger.Things.Opened;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.ArchiveProblem;
import tenterbook.ledger.revision.Revision;

/** Killing a process is not a power cut: what the disk itself forgets is not tested here. */
class LedgerProcessTest {
    private static final int ROUNDS = Thorough.times(4, 40);
    private static final Pattern SAVED = Pattern.compile("saved (\\d+) (P[\\d-]+)\\.");

    @TempDir
    Path root;

    @Test
    @Timeout(120)
    void whatWasAcknowledgedSurvivesAKilledProcessAndNoActIsHalfThere() throws Exception {
        long seed = System.nanoTime();
        Random random = new Random(seed);
        Map<Long, String> acknowledged = new TreeMap<>();
        for (int round = 1; round <= ROUNDS; round++) {
            Process child = LedgerChild.start(root, String.valueOf(round));
            try (BufferedReader output = child.inputReader()) {
                String first = output.readLine();
                assertThat(first)
                        .as("round %d of seed %d wrote something", round, seed)
                        .matches(SAVED);
                Thread killer = new Thread(() -> {
                    try {
                        Thread.sleep(random.nextInt(300));
                    } catch (InterruptedException e) {
                        Thread.currentThread().interrupt();
                    }
                    // By its handle: Process.destroyForcibly would also close the output that is still being read.
                    child.toHandle().destroyForcibly();
                });
                killer.start();
                for (String line = first; line != null; line = output.readLine()) {
                    Matcher saved = SAVED.matcher(line);
                    if (saved.matches()) {
                        acknowledged.put(Long.parseLong(saved.group(1)), saved.group(2));
                    }
                }
                killer.join();
            }
            child.waitFor();
            try (Opened opened = new Opened(root)) {
                Ledger ledger = opened.ledger;
                assertThat(opened.check())
                        .as("round %d of seed %d", round, seed)
                        .isEmpty();
                long last = ledger.lastSequence();
                assertThat(last % 3)
                        .as("half an act, round %d of seed %d", round, seed)
                        .isZero();
                List<Revision> all = ledger.after(0, Integer.MAX_VALUE);
                assertThat(all).hasSize((int) last);
                acknowledged.forEach((sequence, id) -> {
                    assertThat(sequence).as("acknowledged, seed %d", seed).isLessThanOrEqualTo(last);
                    assertThat(all.get((int) (sequence - 1)).key()).isEqualTo(Things.PRINT.key(id));
                });
                for (int i = 0; i < all.size(); i += 3) {
                    assertThat(ledger.references(all.get(i + 2).key()))
                            .containsExactlyInAnyOrder(
                                    all.get(i).key(), all.get(i + 1).key());
                }
            }
        }
        assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(ROUNDS);
    }

    @Test
    @Timeout(60)
    void aSecondProcessOnTheSameFolderIsRefusedUntilTheFirstLetsGo() throws Exception {
        Process child = LedgerChild.start(root, "hold");
        try (BufferedReader output = child.inputReader()) {
            assertThat(output.readLine()).isEqualTo("held");

            assertThatThrownBy(() -> ArchiveFolder.hold(root))
                    .isInstanceOf(ArchiveProblem.class)
                    .hasMessageContaining("is already open in another Tenterbook")
                    .hasMessageContaining("Nothing was changed");

            child.getOutputStream().write('\n');
            child.getOutputStream().flush();
            assertThat(child.waitFor()).isZero();
        } finally {
            child.destroyForcibly();
        }
        try (Opened opened = new Opened(root)) {
            assertThat(opened.check()).isEmpty();
        }
    }

    @Test
    void aSecondHoldInTheSameProcessIsRefusedToo() {
        try (ArchiveFolder held = ArchiveFolder.hold(root)) {
            assertThatThrownBy(() -> ArchiveFolder.hold(root))
                    .isInstanceOf(ArchiveProblem.class)
                    .hasMessageContaining("is already open");
            assertThat(held.ledger()).isEqualTo(root.resolve("ledger.db"));
        }
        ArchiveFolder.hold(root).close();
    }
}
