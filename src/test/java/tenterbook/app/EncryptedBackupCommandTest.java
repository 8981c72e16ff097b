package tenterbook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.app.Ran.run;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.exchange.Demo;
import tenterbook.exchange.SharedBackupKey;
import tenterbook.measure.Digest;

/** Encrypted backups by commands; the passphrase comes from a file or the terminal. */
class EncryptedBackupCommandTest {
    @TempDir
    Path around;

    private Path studio;
    private Path disk;
    private Path words;

    @BeforeEach
    void encrypt() throws IOException {
        studio = around.resolve("studio");
        disk = Files.createDirectory(around.resolve("disk"));
        Demo.open(studio).close();
        SharedBackupKey.giveTo(studio);
        words = Files.writeString(around.resolve("words.txt"), SharedBackupKey.WORDS + "\n");
    }

    @Test
    void itIsMadeBesideTheRunningProgramTriedCheckedAndRestored() throws IOException {
        String last;
        try (Archive running = Archive.open(studio, Demo.CLOCK)) {
            last = running.ledger().lastHash().hex();
            Ran made = run("backup", "--archive", studio, "--to", disk, "--trial", "--passphrase-file", words);
            assertThat(made.code()).as(made.out() + made.err()).isZero();
            assertThat(made.out()).contains("The trial restore succeeded").doesNotContain(SharedBackupKey.WORDS);
        }
        assertThat(disk.resolve("studio-backup")).doesNotExist();
        Ran checked = run("check", "--archive", disk);
        assertThat(checked.code()).as(checked.out()).isZero();
        assertThat(checked.out()).contains("all 5 files").contains("Without the passphrase it was not looked at");
        Path again = around.resolve("again");
        Ran restored = run("restore", "--from", disk, "--archive", again, "--passphrase-file", words);
        assertThat(restored.code()).as(restored.err()).isZero();
        assertThat(restored.out()).contains("encrypted for the same passphrase");
        try (Archive back = Archive.open(again, Demo.CLOCK)) {
            assertThat(back.ledger().lastHash().hex()).isEqualTo(last);
        }
    }

    /** One key is made here, which takes a while: the only command that does. */
    @Test
    void itIsTurnedOnByACommandWithThePassphraseFromTheStandardInput() throws IOException {
        Files.delete(studio.resolve("backup-key.asc"));
        String chosen = "heron fig weir dusk";
        InputStream before = System.in;
        try {
            System.setIn(typed("too short"));
            Ran unfit = run("backup", "--archive", studio, "--to", disk, "--encrypt", "--passphrase-file", "-");
            assertThat(unfit.err()).contains("at least 12 characters; found 9");
            assertThat(CheckedBagTest.files(disk)).isEmpty();
            System.setIn(typed(chosen));
            Ran made =
                    run("backup", "--archive", studio, "--to", disk, "--encrypt", "--trial", "--passphrase-file", "-");
            assertThat(made.code()).as(made.out() + made.err()).isZero();
            assertThat(made.out())
                    .contains("encrypted from now on", "The trial restore succeeded")
                    .doesNotContain(chosen);
            assertThat(disk.resolve("studio-backup")).doesNotExist();
            System.setIn(typed(chosen));
            Ran again = run("backup", "--archive", studio, "--to", disk, "--encrypt", "--passphrase-file", "-");
            assertThat(again.err()).contains("encrypted already");
            System.setIn(typed(chosen));
            Path back = around.resolve("back");
            Ran restored = run("restore", "--from", disk, "--archive", back, "--passphrase-file", "-");
            assertThat(restored.code()).as(restored.err()).isZero();
        } finally {
            System.setIn(before);
        }
        Ran none = run("backup", "--archive", studio, "--to", disk, "--trial");
        assertThat(none.err()).contains("no terminal to ask on");
    }

    private static InputStream typed(String line) {
        return new ByteArrayInputStream((line + "\n").getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void aWrongOrMissingPassphraseIsASentenceAndChangesNothing() throws IOException {
        assertThat(run("backup", "--archive", studio, "--to", disk).code()).isZero();
        Map<String, Digest> before = CheckedBagTest.files(around);
        Path again = around.resolve("again");
        Ran none = run("restore", "--from", disk, "--archive", again);
        assertThat(none.code()).isEqualTo(1);
        assertThat(none.err()).contains("no terminal to ask on").contains("--passphrase-file");
        Path other = around.resolve("other.txt");
        Ran missing = run("restore", "--from", disk, "--archive", again, "--passphrase-file", other);
        assertThat(missing.code()).isEqualTo(1);
        assertThat(missing.err()).contains("other.txt");
        Files.writeString(other, "not the passphrase");
        Ran wrong = run("restore", "--from", disk, "--archive", again, "--passphrase-file", other);
        assertThat(wrong.code()).isEqualTo(1);
        assertThat(wrong.err()).contains("does not open the backup").contains("Nothing was changed");
        Map<String, Digest> onDisk = CheckedBagTest.files(disk);
        Ran wrongTrial = run("backup", "--archive", studio, "--to", disk, "--trial", "--passphrase-file", other);
        assertThat(wrongTrial.code()).isEqualTo(1);
        assertThat(wrongTrial.err()).contains("does not open the backup").contains("Nothing was changed");
        InputStream input = System.in;
        try {
            for (Object[] command : new Object[][] {
                {"restore", "--from", disk, "--archive", again, "--passphrase-file", "-"},
                {"backup", "--archive", studio, "--to", disk, "--trial=ALL", "--passphrase-file", "-"}
            }) {
                System.setIn(typed(""));
                Ran empty = run(command);
                assertThat(empty.code()).isEqualTo(1);
                assertThat(empty.err()).contains("its passphrase was not given");
            }
        } finally {
            System.setIn(input);
        }
        assertThat(CheckedBagTest.files(disk)).isEqualTo(onDisk);
        Files.delete(other);
        assertThat(CheckedBagTest.files(around)).isEqualTo(before);
        Ran unfit = run("restore", "--from", disk, "--archive", studio, "--passphrase-file", words);
        assertThat(unfit.code()).isEqualTo(1);
    }
}
