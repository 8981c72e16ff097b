package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.Thorough;
import tenterbook.archive.Archive;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.ledger.file.Progress;

/**
 * A process killed while it packs or restores leaves nothing under the name, or the whole. Killing is not a power cut:
 * what the system had in memory still reaches the disk here.
 */
class KilledTest {
    private static final int RANDOM_KILLS = Thorough.times(2, 25);

    private static final int PHOTOS = 12;
    private static final int BYTES = 600_000;

    @TempDir
    Path around;

    /** What the child does: packs or restores, and halts at the nth sign of progress; 0 for never. */
    static final class Child {
        private Child() {}

        public static void main(String[] arguments) {
            Path from = Path.of(arguments[1]);
            Path to = Path.of(arguments[2]);
            int last = Integer.parseInt(arguments[3]);
            Progress halting = new Progress() {
                private int seen;

                @Override
                public void at(long done, long total, String what) {
                    seen++;
                    if (seen == last) {
                        Runtime.getRuntime().halt(9);
                    }
                }

                @Override
                public boolean cancelled() {
                    return false;
                }
            };
            if (arguments[0].equals("pack")) {
                try (Archive archive = Archive.open(from, Demo.CLOCK)) {
                    new Pack(Demo.CLOCK).pack(archive, to, halting);
                }
            } else {
                new Restore(Demo.CLOCK).restore(from, to, halting);
            }
        }
    }

    private Process start(String work, Path from, Path to, int last) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx128m",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Child.class.getName(),
                        work,
                        from.toString(),
                        to.toString(),
                        Integer.toString(last))
                .redirectErrorStream(true)
                .redirectOutput(around.resolve("child.log").toFile())
                .start();
    }

    private interface Whole {
        void check(Path made) throws IOException;
    }

    /** Halts at signs of progress spread over the work, then kills at random moments; at last nothing interferes. */
    private void killed(String work, Path from, int signs, Whole whole) throws Exception {
        Path to = around.resolve("target-" + work);
        List<Integer> points = new ArrayList<>(List.of(1, signs / 5, signs / 2, signs * 4 / 5, signs - 1, signs));
        int nothing = 0;
        for (int point : points) {
            Process child = start(work, from, to, point);
            assertThat(child.waitFor(120, TimeUnit.SECONDS)).isTrue();
            assertThat(child.exitValue())
                    .as(Files.readString(around.resolve("child.log")))
                    .isEqualTo(9);
            if (Files.exists(to)) {
                // Only after the very last sign of progress has the thing got its name.
                assertThat(point).isEqualTo(signs);
                whole.check(to);
                Files.move(to, around.resolve("whole-" + work));
            } else {
                nothing++;
                assertThat(point).isLessThan(signs);
            }
        }
        assertThat(nothing).isEqualTo(points.size() - 1);

        Random random = new Random();
        long began = System.nanoTime();
        assertThat(start(work, from, to, 0).waitFor(120, TimeUnit.SECONDS)).isTrue();
        long millis = (System.nanoTime() - began) / 1_000_000;
        whole.check(to);
        Files.move(to, around.resolve("unhindered-" + work));
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
                "pack",
                studio,
                counting.signs,
                made -> assertThat(BagCheck.run(made, Progress.UNWATCHED).findings())
                        .isEmpty());

        try (Archive archive = Archive.open(studio, Demo.CLOCK)) {
            assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
            new Pack(Demo.CLOCK).pack(archive, around.resolve("target-pack"), Progress.UNWATCHED);
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

        killed("restore", bag, counting.signs, made -> {
            try (Archive archive = Archive.open(made, Demo.CLOCK)) {
                assertThat(ArchiveCheck.run(archive, Progress.UNWATCHED)).isEmpty();
                assertThat(archive.ledger().lastSequence()).isEqualTo(8 + PHOTOS);
            }
        });

        new Restore(Demo.CLOCK).restore(bag, around.resolve("target-restore"), Progress.UNWATCHED);
        assertThat(unfinished())
                .as("what killed ones left is cleared by the next")
                .isEmpty();
    }
}
