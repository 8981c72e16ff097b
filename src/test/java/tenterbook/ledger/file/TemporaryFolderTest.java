package tenterbook.ledger.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.exchange.Demo;

class TemporaryFolderTest {
    @TempDir
    Path around;

    /** The number of a process that has ended. */
    private static long dead() throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-version")
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        process.waitFor();
        return process.pid();
    }

    private static Path left(long process) throws IOException {
        Path folder = Files.createTempDirectory("tenterbook-ledger-" + process + "-");
        Files.writeString(Files.createDirectory(folder.resolve("index")).resolve("segments_1"), "");
        Files.writeString(folder.resolve("ledger.db"), "a copy");
        return folder;
    }

    @Test
    void whatAKilledReadOnlyProgramLeftIsDeletedByTheNextOne() throws Exception {
        Path studio = around.resolve("studio");
        Demo.open(studio).close();
        Path stale = left(dead());
        Path own = left(ProcessHandle.current().pid());
        try {
            Path copy;
            try (Archive archive = Archive.lookThrough(studio, Demo.CLOCK)) {
                copy = archive.folder().ledger();
                assertThat(copy).exists();
                assertThat(stale).as("of a process that has ended").doesNotExist();
                assertThat(own.resolve("ledger.db")).as("of one that runs").exists();
            }
            assertThat(copy.getParent()).doesNotExist();
        } finally {
            TemporaryFolder.delete(own);
            TemporaryFolder.delete(stale);
        }
    }
}
