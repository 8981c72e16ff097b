package tenterbook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.app.Ran.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;

class ImportCommandTest {
    @TempDir
    Path folder;

    private int pieces(Path studio) {
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            return archive.ledger().count(Kinds.PIECE);
        }
    }

    @Test
    void aDryRunWritesNothingAndAnImportIsTakenBackByItsName() throws IOException {
        Path studio = folder.resolve("studio");
        pieces(studio);
        Path sheet = Files.writeString(folder.resolve("x.csv"), "number,title,price\nV1,Tide,180\nV2,x,none of it\n");
        Ran dry = run("import", sheet, "--kind", "pieces", "--dry-run", "--archive", studio);
        assertThat(dry.out()).contains("title: title", "Row 3:", "1 new", "1 refused");
        assertThat(dry.code()).isEqualTo(1);
        assertThat(pieces(studio)).isZero();
        Ran written = run("import", sheet, "--kind", "pieces", "--archive", studio);
        assertThat(written.out()).contains("Brought in: 1 new");
        assertThat(pieces(studio)).isEqualTo(1);
        String id = written.out().replaceAll("(?s).*import --undo (\\S+).*", "$1");
        assertThat(run("import", "--undo", id, "--archive", studio).out()).contains("1 withdrawn");
        assertThat(pieces(studio)).isZero();
        Path odd = Files.writeString(folder.resolve("y.csv"), "No,What it is called = name\nV7,Moon\n");
        Ran chosen = run(
                "import",
                odd,
                "--kind",
                "pieces",
                "--dry-run",
                "--column",
                "No=number",
                "--column",
                "what it is called = name=title",
                "--archive",
                studio);
        assertThat(chosen.out()).as(chosen.err()).contains("What it is called = name: title", "1 new");
        assertThat(run("import", sheet, "--kind", "boats", "--archive", studio).err())
                .contains("pieces, people, cloths");
    }
}
