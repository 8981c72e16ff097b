package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;

class ArchiveCheckTest {
    @TempDir
    Path folder;

    private static List<String> found(Archive archive) {
        return ArchiveCheck.run(archive, Progress.UNWATCHED).stream()
                .map(Finding::toString)
                .toList();
    }

    private void sql(String... statements) throws Exception {
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("ledger.db"));
                var statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    @Test
    void aWholeArchiveHasNoFindings() throws IOException {
        try (Archive archive = Demo.open(folder)) {
            Files.createDirectories(archive.folder().photos().resolve("arriving"));
            Files.writeString(archive.folder().photos().resolve("arriving/half.part"), "still coming");

            assertThat(found(archive)).isEmpty();
        }
    }

    @Test
    void aMissingAndAChangedOriginalAreBothTold() throws IOException {
        try (Archive archive = Demo.open(folder)) {
            List<String> photos = archive.ledger().allIdsEverUsed(Kinds.PHOTO);
            Files.delete(Demo.file(archive, new Digest(photos.get(2))));
            Path changed = Demo.file(archive, new Digest(photos.get(0)));
            byte[] bytes = Files.readAllBytes(changed);
            bytes[100] ^= 4;
            Files.write(changed, bytes);

            assertThat(found(archive))
                    .satisfiesExactly(
                            one -> assertThat(one)
                                    .contains(photos.get(0))
                                    .contains("its SHA-256 is " + Digest.of(bytes)),
                            two -> assertThat(two).contains(photos.get(2)).contains("its original is missing"));
        }
    }

    @Test
    void anOrphanASecondCopyAndAStrangersFileAreFindingsThatSayHowTheyArise() throws IOException {
        try (Archive archive = Demo.open(folder)) {
            Digest orphan = Demo.photo(archive, 42, 10);
            Path first = Demo.file(
                    archive,
                    new Digest(archive.ledger().allIdsEverUsed(Kinds.PHOTO).get(0)));
            Files.copy(first, Path.of(first.toString().replace(".jpg", ".jpx")));
            Files.writeString(archive.folder().photos().resolve("holiday.jpg"), "x");

            assertThat(found(archive))
                    .hasSize(3)
                    .anyMatch(line -> line.contains(orphan.hex())
                            && line.contains(
                                    "an orphan: no record names it. This happens when the program was stopped"))
                    .anyMatch(line -> line.contains("a second file of the same photograph"))
                    .anyMatch(line -> line.contains("holiday.jpg") && line.contains("put there by hand"));
        }
    }

    @Test
    void whereTheLedgerNamesNoPhotographNoneIsToBeDeleted() {
        try (Archive archive = Archive.open(folder, Demo.CLOCK)) {
            Demo.photo(archive, 42, 10);

            assertThat(found(archive))
                    .singleElement()
                    .asString()
                    .contains("Keep the file")
                    .contains("restore the newest bag into another folder")
                    .doesNotContain("delete");
        }
    }

    @Test
    void aWithdrawnPhotographStillNeedsItsOriginal() throws IOException {
        try (Archive archive = Demo.open(folder)) {
            Digest digest = Demo.photo(archive, 43, 10);
            archive.ledger().write("Inês Valderim", act -> act.create(Kinds.PHOTO, Demo.record(digest, 10)));
            archive.ledger().write("Inês Valderim", act -> {
                act.withdraw(Kinds.PHOTO, digest.hex(), 1, "blurred");
                return null;
            });
            assertThat(found(archive)).isEmpty();

            Files.delete(Demo.file(archive, digest));
            assertThat(found(archive)).singleElement().asString().contains("its original is missing");
        }
    }

    @Test
    void aReferenceThatIsLostOrInventedIsTold() throws Exception {
        Demo.open(folder).close();
        sql(
                "DELETE FROM reference WHERE to_kind = 'clamping'",
                "INSERT INTO reference VALUES ('clamping', 'C24-001', 'party', 'vermia')");
        try (Archive archive = Archive.open(folder, Demo.CLOCK)) {
            assertThat(found(archive))
                    .containsExactly(
                            "clamping C24-001: does not name the party vermia, but the table ‘reference’ says so. Saving the record again repairs it.",
                            "piece V24-001: names the clamping C24-001, but the table ‘reference’ does not say so. Saving the record again repairs it.");
        }
    }

    @Test
    void aRecordThatNamesAMissingOneIsTold() throws Exception {
        Demo.open(folder).close();
        sql(
                "DROP TRIGGER private_parts_are_only_redacted",
                "UPDATE private_parts SET fields = replace(fields, 'vermia', 'ondrel') WHERE sequence = (SELECT sequence FROM current WHERE id = 'V24-001')",
                "UPDATE current_texts SET record = replace(record, 'vermia', 'ondrel') WHERE sequence = (SELECT sequence FROM current WHERE id = 'V24-001')");
        try (Archive archive = Archive.open(folder, Demo.CLOCK)) {
            assertThat(found(archive))
                    .anyMatch(line -> line.startsWith(
                            "piece V24-001: names the party ondrel, which is not in the archive or was withdrawn"))
                    .anyMatch(line -> line.contains("its private part does not give its digest"));
        }
    }

    @Test
    void aRecordThatCannotBeReadIsToldAndTheRestIsStillChecked() throws Exception {
        Demo.open(folder).close();
        sql(
                "DROP TRIGGER revisions_are_never_changed",
                "UPDATE revisions SET record = '{\"id\":7}' WHERE kind = 'board-pair' AND id = 'B01'",
                "DELETE FROM reference WHERE to_kind = 'clamping'");
        try (Archive archive = Archive.open(folder, Demo.CLOCK)) {
            assertThat(found(archive))
                    .anyMatch(line -> line.startsWith("board-pair B01:"))
                    .anyMatch(line -> line.startsWith("piece V24-001: names the clamping C24-001, but"));
        }
    }
}
