package tenterbook.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.Thorough;
import tenterbook.ledger.Things.Opened;
import tenterbook.ledger.file.ArchiveProblem;

/** A folder whose very first start was killed, at whatever moment, starts the next time. */
class KilledFirstStartTest {
    private static final int KILLS = Thorough.times(5, 100);

    @TempDir
    Path around;

    /** Begins a ledger and says when it starts and when it is open. */
    static final class Child {
        private Child() {}

        public static void main(String[] arguments) throws InterruptedException {
            System.out.println("starting");
            Opened opened = new Opened(Path.of(arguments[0]));
            System.out.println("open");
            Thread.sleep(60_000);
            opened.close();
        }
    }

    private static Process start(Path root) throws IOException {
        Process child = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx64m",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Child.class.getName(),
                        root.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        assertThat(child.inputReader().readLine()).isEqualTo("starting");
        return child;
    }

    private static void kill(Process child) throws InterruptedException {
        child.destroyForcibly().waitFor();
    }

    private static String files(Path root) throws IOException {
        if (!Files.exists(root)) {
            return "no folder";
        }
        Map<String, Long> files = new TreeMap<>();
        try (Stream<Path> inside = Files.list(root)) {
            for (Path file : inside.toList()) {
                files.put(file.getFileName().toString(), Files.size(file));
            }
        }
        return files.entrySet().stream()
                .map(file -> file.getKey() + (file.getValue() == 0 ? " empty" : ""))
                .collect(Collectors.joining(", "));
    }

    private static void startsNow(Path root, String left) {
        try (Opened opened = new Opened(root)) {
            opened.board("B01", "Fig");
            assertThat(opened.check()).as(left).isEmpty();
        } catch (ArchiveProblem e) {
            throw new AssertionError("Left by the kill: " + left, e);
        }
    }

    @Test
    void aFolderWhoseFirstStartWasKilledStartsTheNextTime() throws Exception {
        Process unhindered = start(around.resolve("unhindered"));
        long began = System.nanoTime();
        assertThat(unhindered.inputReader().readLine()).isEqualTo("open");
        long millis = (System.nanoTime() - began) / 1_000_000;
        kill(unhindered);

        Random random = new Random();
        Map<String, Integer> states = new HashMap<>();
        for (int n = 0; n < KILLS; n++) {
            Path root = around.resolve("studio-" + n);
            Process child = start(root);
            if (n % 2 == 0) {
                // Every other kill falls after the file has come about, which is the shorter part of a start.
                long until = System.nanoTime() + 20_000_000_000L;
                while (!Files.exists(root.resolve("ledger.db")) && System.nanoTime() < until) {
                    Thread.onSpinWait();
                }
                Thread.sleep(random.nextLong(0, millis / 3 + 1));
            } else {
                Thread.sleep(random.nextLong(0, millis + 1));
            }
            kill(child);
            String left = files(root);
            states.merge(left, 1, Integer::sum);
            startsNow(root, left);
        }
        assertThat(states).as("kills fell at different moments").hasSizeGreaterThan(1);
    }
}
