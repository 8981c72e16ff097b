package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.Thorough;
import tenterbook.archive.Archive;
import tenterbook.exchange.KilledWork.Kind;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.ledger.file.Progress;

/**
 * A process killed while it packs or restores leaves nothing under the name, or the whole. Killing is not a power cut:
 * what the system had in memory still reaches the disk here.
 */
class KilledTest {
    private static final int RANDOM_KILLS = Thorough.times(1, 25);

    /** Where the work is halted, in hundredths of its signs of progress; the last has done all. */
    private static final List<Integer> POINTS =
            Thorough.times(0, 1) == 0 ? List.of(0, 60, 100) : List.of(0, 20, 50, 80, 99, 100);

    private static final int PHOTOS = 6;
    private static final int BYTES = 600_000;

    @TempDir
    Path around;

    private interface Whole {
        void check(Path made) throws IOException;
    }

    private Process start(Kind work, Path from, Path to, int haltAt) throws IOException {
        return KilledWork.start(work, from, to, around.resolve("acknowledged"), haltAt);
    }

    /** Halts at signs of progress spread over the work, then kills at random moments; at last nothing interferes. */
    private void killed(Kind work, Path from, int signs, Whole whole) throws Exception {
        Path to = around.resolve("target-" + work);
        long millis = 0;
        for (int point :
                POINTS.stream().map(share -> Math.max(1, share * signs / 100)).toList()) {
            long began = System.nanoTime();
            Process child = start(work, from, to, point);
            assertThat(child.waitFor(120, TimeUnit.SECONDS)).isTrue();
            millis = (System.nanoTime() - began) / 1_000_000;
            assertThat(child.exitValue())
                    .as(Files.readString(around.resolve("child.log")))
                    .isEqualTo(9);
            // Only after the very last sign of progress has the thing got its name.
            assertThat(Files.exists(to)).isEqualTo(point == signs);
        }
        whole.check(to);
        Files.move(to, around.resolve("whole-" + work));
        Random random = new Random();
        for (int n = 0; n < RANDOM_KILLS; n++) {
            Process child = start(work, from, to, 0);
            child.waitFor(random.nextLong(millis / 4, millis + millis / 4), TimeUnit.MILLISECONDS);
            child.destroyForcibly().waitFor(20, TimeUnit.SECONDS);
            if (Files.exists(to)) {
                whole.check(to);
                Files.move(to, around.resolve("random-" + work + n));
            }
        }
    }

    private static final class Counting implements Progress {
        private int signs;

        @Override
        public void at(long done, long total, String what) {
            signs++;
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    }

    private List<Path> unfinished() throws IOException {
        try (var inside = Files.list(around)) {
            return inside.filter(path -> path.getFileName().toString().contains("unfinished-"))
                    .toList();
        }
    }

    @Test
    void aKilledPackLeavesNoBagOrAWholeOne() throws Exception {
        Counting counting = new Counting();
        Path studio = around.resolve("studio");
        try (Archive archive = Demo.open(studio, PHOTOS, BYTES)) {
            new Pack(Demo.CLOCK).pack(archive, around.resolve("counted"), counting);
        }

        killed(
                Kind.PACK,
                studio,
                counting.signs,
                made -> assertThat(BagCheck.run(made, Progress.UNWATCHED).findings())
                        .isEmpty());

        try (Archive archive = Archive.open(studio, Demo.CLOCK)) {
            assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
            new Pack(Demo.CLOCK).pack(archive, around.resolve("target-PACK"), Progress.UNWATCHED);
        }
        assertThat(unfinished())
                .as("what killed ones left is cleared by the next")
                .isEmpty();
    }

    @Test
    void aKilledRestoreLeavesNoArchiveOrAWholeOne() throws Exception {
        Counting counting = new Counting();
        Path bag = around.resolve("bag");
        try (Archive archive = Demo.open(around.resolve("studio"), PHOTOS, BYTES)) {
            new Pack(Demo.CLOCK).pack(archive, bag, Progress.UNWATCHED);
        }
        new Restore(Demo.CLOCK).restore(bag, around.resolve("counted"), counting);

        killed(Kind.RESTORE, bag, counting.signs, made -> {
            try (Archive archive = Archive.open(made, Demo.CLOCK)) {
                assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
                assertThat(archive.ledger().lastSequence()).isEqualTo(8 + PHOTOS);
            }
        });

        new Restore(Demo.CLOCK).restore(bag, around.resolve("target-RESTORE"), Progress.UNWATCHED);
        assertThat(unfinished())
                .as("what killed ones left is cleared by the next")
                .isEmpty();
    }
}
