package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tenterbook.exchange.backup.BackupNote;

/** Backups from the studio's page, and the reminder on the page of today. */
class BackupPagesTest extends Scenario {
    private Path archive() {
        return around.resolve("studio");
    }

    @Test
    void aFolderIsChosenOnceAndThePageSaysHowOldTheBackupIs() throws IOException {
        saved("/pieces", "number", "V24-001");
        assertThat(client.get("/studio").words()).contains("No good backup was made yet from here");
        Path disk = Files.createDirectory(around.resolve("disk"));
        assertThat(over(saved("/studio/backup", "folder", disk.toString())))
                .contains("is made and was read back: one revision");
        String studio = client.get("/studio").text();
        assertThat(studio).contains(disk.toString()).contains("The last good backup was made on");
        assertThat(over(saved("/studio/backup/trial"))).contains("The trial restore succeeded");
    }

    @Test
    void aDiskThatIsNotThereIsASentence() throws IOException {
        String words =
                over(saved("/studio/backup", "folder", around.resolve("gone").toString()));
        assertThat(words).contains("No good backup was made").contains("Connect the disk");
        assertThat(around.resolve("gone")).doesNotExist();
        assertThat(saved("/studio/backup", "folder", "backups")).isEqualTo("/studio");
    }

    @Test
    void anOldBackupIsNamedOnThePageOfToday() throws IOException {
        assertThat(client.get("/today").words()).doesNotContain("backup");
        saved("/pieces", "number", "V24-001");
        assertThat(client.get("/today").words()).as("the archive is of today").doesNotContain("backup");
        wiring.close();
        wiring =
                tenterbook.app.Wiring.serve(archive(), 0, java.time.Clock.offset(CLOCK, java.time.Duration.ofDays(20)));
        client = new Client(wiring.port());
        assertThat(client.get("/today").words()).contains("No backup was made from here yet");
        new BackupNote("/media/disk", Optional.of(Instant.parse("2024-10-12T08:00:00Z"))).keep(archive());
        assertThat(client.get("/today").words()).contains("The last good backup is 8 days old");
        new BackupNote("/media/disk", Optional.of(Instant.parse("2024-10-18T08:00:00Z"))).keep(archive());
        assertThat(client.get("/today").words()).doesNotContain("backup");
    }

    /** What is typed stands in no address, no draft and no page; the files that need it open with it alone. */
    @Test
    void backupsAreEncryptedOnceAPassphraseIsChosenAndTriedWithIt() throws IOException {
        saved("/pieces", "number", "V24-001");
        Path disk = Files.createDirectory(around.resolve("disk"));
        String words = "three herons at the weir";
        String[] fields = {"passphrase", "again"};
        assertThat(flash("/studio/backup/encrypted", fields[0], "herons", fields[1], "herons"))
                .contains("at least 12 characters");
        assertThat(flash("/studio/backup/encrypted", fields[0], words, fields[1], words + "s"))
                .contains("not the same");
        assertThat(flash("/studio/backup/encrypted")).contains("at least 12 characters");
        assertThat(archive().resolve("backup-key.asc")).doesNotExist();
        assertThat(flash("/studio/backup/encrypted", fields[0], words, fields[1], words))
                .contains("encrypted from now on")
                .contains("Backups made before are not encrypted");
        assertThat(over(saved("/studio/backup", "folder", disk.toString()))).contains("studio-backup-encrypted");
        Answer studio = client.get("/studio");
        assertThat(studio.words()).contains("Backups are encrypted.");
        assertThat(studio.text())
                .containsPattern("name=\"passphrase\" type=\"password\"")
                .doesNotContain("herons")
                .doesNotContain("data-draft=\"studio/backup");
        assertThat(over(saved("/studio/backup/trial", "passphrase", "three storks at the weir")))
                .contains("does not open the backup")
                .contains("Nothing was changed");
        assertThat(over(saved("/studio/backup/trial", "passphrase", words)))
                .contains("The trial restore succeeded")
                .doesNotContain("herons");
        assertThat(flash("/studio/backup/plain")).contains("The encrypted ones stay where they are");
        assertThat(disk.resolve("studio-backup-encrypted/key.asc")).isRegularFile();
        assertThat(client.get("/studio").words()).contains("No good backup was made yet from here");
        assertThat(over(saved("/studio/backup", "folder", disk.toString()))).contains("studio-backup/ledgers");
        try (var files = Files.walk(around)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                assertThat(new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1))
                        .as(file.toString())
                        .doesNotContain(words);
            }
        }
    }

    /** The sentence on the page that follows. */
    private String flash(String path, String... namesAndValues) throws IOException {
        Answer answer = client.post(path, namesAndValues);
        assertThat(answer.status()).isEqualTo(303);
        assertThat(answer.location()).isEqualTo("/studio");
        String cookie = answer.header("Set-Cookie").split(";")[0].replaceFirst("^said=", "");
        return java.net.URLDecoder.decode(cookie, java.nio.charset.StandardCharsets.UTF_8);
    }
}
