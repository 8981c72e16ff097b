package tenterbook.imaging;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.ledger.file.HashedFiles;
import tenterbook.measure.Digest;

/** Kills a running program while it stores photographs. Process kill, not power loss. */
class KilledIntakeTest {
    @TempDir
    Path folder;

    @Test
    void aKilledProgramLeavesNoHalfOriginalAndLosesNoneItAcknowledged() throws Exception {
        Path photos = folder.resolve("photos");
        Path acknowledged = folder.resolve("acknowledged");
        for (int millis : new int[] {350, 90, 170}) {
            Process child = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-Xmx128m",
                            "-cp",
                            System.getProperty("java.class.path"),
                            KilledIntakeTest.class.getName(),
                            photos.toString(),
                            acknowledged.toString())
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("log").toFile())
                    .start();
            long before = lines(acknowledged);
            while (lines(acknowledged) < before + 3 && child.isAlive()) {
                Thread.onSpinWait();
            }
            child.waitFor(millis, TimeUnit.MILLISECONDS);
            assertThat(child.isAlive())
                    .as(Files.readString(folder.resolve("log")))
                    .isTrue();
            child.destroyForcibly().waitFor();

            Originals reopened = new Originals(photos);
            List<Digest> kept = reopened.all().toList();
            for (Digest digest : kept) {
                assertThat(reopened.verify(digest)).isEqualTo(HashedFiles.Check.GOOD);
            }
            assertThat(kept.stream().map(Digest::hex))
                    .containsAll(Files.readAllLines(acknowledged).stream()
                            .filter(line -> line.length() == 64)
                            .toList());
            try (Stream<Path> parts = Files.list(photos.resolve("arriving"))) {
                assertThat(parts).isEmpty();
            }
        }
    }

    private static long lines(Path file) throws IOException {
        return Files.exists(file) ? Files.size(file) / 65 : 0;
    }

    /** The child: stores photographs, each a little different, until it is killed; notes each one that is in place. */
    public static void main(String[] args) throws IOException {
        byte[] jpeg = Corners.jpeg(640, 480);
        Originals originals = new Originals(Path.of(args[0]));
        try (var out = Files.newOutputStream(
                Path.of(args[1]), java.nio.file.StandardOpenOption.CREATE, java.nio.file.StandardOpenOption.APPEND)) {
            for (long i = System.nanoTime(); ; i++) {
                byte[] padded = java.util.Arrays.copyOf(jpeg, 900_000);
                java.nio.ByteBuffer.wrap(padded).putLong(padded.length - 8, i);
                StoredOriginal stored = originals.store(new ByteArrayInputStream(padded), Originals.LIMIT_BYTES);
                out.write((stored.digest().hex() + "\n").getBytes(java.nio.charset.StandardCharsets.US_ASCII));
            }
        }
    }
}
