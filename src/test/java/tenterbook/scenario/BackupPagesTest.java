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
}
