package tenterbook.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.bag.BagCheck;
import tenterbook.ledger.file.ArchiveFolder;
import tenterbook.ledger.file.Finding;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;

class PackTest {
    @TempDir
    Path around;

    private Path target() {
        return around.resolve("bag");
    }

    @Test
    void theLibraryOfTheFormatsAuthorsFindsTheBagValid() throws Exception {
        Bag bag = Demo.bag(around);

        try (BagVerifier verifier = new BagVerifier()) {
            var read = new BagReader().read(bag.folder());
            verifier.isValid(read, false);
            BagVerifier.quicklyVerify(read);
            assertThat(read.getVersion()).hasToString("1.0");
            assertThat(read.getPayLoadManifests())
                    .extracting(manifest -> manifest.getAlgorithm().getBagitName())
                    .containsExactlyInAnyOrder("sha256", "sha512");
            assertThat(read.getTagManifests()).hasSize(2);
        }
        assertThat(BagCheck.run(bag.folder(), Progress.UNWATCHED).findings()).isEmpty();
    }

    @Test
    void theBagHoldsTheLedgerTwiceThePhotographsAndWordsToReadThemBy() throws IOException {
        Bag bag = Demo.bag(around);

        assertThat(Demo.tree(bag.folder()).stream().filter(path -> !path.contains("photos/")))
                .containsExactlyInAnyOrder(
                        "",
                        "bag-info.txt",
                        "bagit.txt",
                        "data",
                        "data/READ-ME-FIRST.txt",
                        "data/ledger.db",
                        "data/ledger.jsonl",
                        "data/photos",
                        "data/records",
                        "data/records/board-pair.json",
                        "data/records/clamping.json",
                        "data/records/party.json",
                        "data/records/photo.json",
                        "data/records/piece.json",
                        "data/records/studio.json",
                        "manifest-sha256.txt",
                        "manifest-sha512.txt",
                        "tagmanifest-sha256.txt",
                        "tagmanifest-sha512.txt");
        assertThat(bag.photos()).isEqualTo(3);
        assertThat(Files.readString(bag.folder().resolve("data/records/board-pair.json")))
                .contains("Fig and wasp")
                .doesNotContain("cut by mistake");
        assertThat(Files.readString(bag.folder().resolve("bag-info.txt")))
                .contains(
                        "Source-Organization: Oficina Valderim",
                        "Bagging-Date: 2024-09-30",
                        "External-Identifier: revision 11, sha256 " + bag.lastHash(),
                        "Tenterbook-Last-Sequence: 11",
                        "Payload-Oxum: %d.%d".formatted(bag.bytes(), bag.files()));
    }

    @Test
    void theBagSaysPlainlyThatNamesAndCoordinatesAreInside() throws IOException {
        Bag bag = Demo.bag(around);
        String readMe = Files.readString(bag.folder().resolve("data/READ-ME-FIRST.txt"));

        assertThat(bag.contents().privacy().inEnglish())
                .contains("buyers")
                .contains("coordinates")
                .contains("full backup");
        assertThat(readMe)
                .contains(bag.contents().privacy().inEnglish())
                .contains(bag.lastHash().hex())
                .contains("Oficina Valderim")
                .doesNotContain("{{");
        assertThat(Files.readString(bag.folder().resolve("data/ledger.jsonl"))).contains(Demo.BUYER);
    }

    @Test
    void theChainIsRecomputedFromTheTextAlone() throws Exception {
        Bag bag = Demo.bag(around);
        String previous = "0".repeat(64);
        List<String> lines = Files.readAllLines(bag.folder().resolve("data/ledger.jsonl"));

        assertThat(lines).hasSize(2 * 11);
        for (int i = 0; i < lines.size(); i += 2) {
            String line = lines.get(i);
            JsonNode content = new ObjectMapper().readTree(lines.get(i + 1));
            for (String part : List.of("public", "private")) {
                assertThat(line)
                        .contains("\"%s_digest\":\"%s\""
                                .formatted(
                                        part,
                                        Digest.of(content.get(part).textValue().getBytes(StandardCharsets.UTF_8))));
            }
            int at = line.indexOf("\"hash\":\"");
            String own = line.substring(at + 8, at + 72);
            String rest = line.substring(0, at) + line.substring(at + 74);
            assertThat(Digest.of(rest.getBytes(StandardCharsets.UTF_8)).hex()).isEqualTo(own);
            assertThat(rest).contains("\"previous_hash\":\"" + previous + "\"");
            previous = own;
        }
        assertThat(previous).isEqualTo(bag.lastHash().hex());
    }

    @Test
    void theProgramPrintedInTheReadMeGivesTheLastHash() throws Exception {
        assumeTrue(runs("python3", "--version"), "Skipped: no python3 here");
        Path data = Demo.bag(around).folder().resolve("data");
        String readMe = Files.readString(data.resolve("READ-ME-FIRST.txt"));
        String program = readMe.substring(readMe.indexOf("    import hashlib"), readMe.indexOf("\nThe last revision"));
        Path script = Files.writeString(around.resolve("recompute.py"), program.replaceAll("(?m)^    ", ""));

        String printed = python(script, data);
        assertThat(printed).hasSize(64);
        assertThat(readMe).contains("    " + printed);

        Path text = data.resolve("ledger.jsonl");
        Files.writeString(text, Files.readString(text).replace("Fig and wasp", "Fig and bee"));
        assertThat(python(script, data)).contains("AssertionError");
    }

    private static String python(Path script, Path data) throws IOException {
        Process python = new ProcessBuilder("python3", script.toString())
                .directory(data.toFile())
                .redirectErrorStream(true)
                .start();
        return new String(python.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    }

    @Test
    void theChecksumToolNamedInTheReadMeAgrees() throws Exception {
        assumeTrue(runs("sha256sum", "--version"), "Skipped: no sha256sum here");
        Path folder = Demo.bag(around).folder();

        for (String manifest : List.of("manifest-sha256.txt", "tagmanifest-sha256.txt")) {
            Process sums = new ProcessBuilder("sha256sum", "--strict", "--quiet", "-c", manifest)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .start();
            String said = new String(sums.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(sums.waitFor()).as(said).isZero();
        }
    }

    private static boolean runs(String... command) throws InterruptedException {
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            process.getInputStream().readAllBytes();
            return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        }
    }

    @Test
    void theLedgerInTheBagIsSettledAndKeepsNothingThatWasOnlyTyped() throws Exception {
        Bag bag = Demo.bag(around);
        Path ledger = bag.folder().resolve("data/ledger.db");
        List<String> before = Demo.tree(bag.folder());

        byte[] bytes = Files.readAllBytes(ledger);
        // SQLite file format, 1.3.3: bytes 18 and 19 are 1 for a rollback journal, 2 for a write-ahead log.
        assertThat(bytes[18]).isEqualTo((byte) 1);
        assertThat(bytes[19]).isEqualTo((byte) 1);
        assertThat(new String(bytes, StandardCharsets.UTF_8))
                .contains("Fig and wasp")
                .doesNotContain("never saved");
        assertThat(ledger.toFile().setReadOnly()).isTrue();
        try (var connection = DriverManager.getConnection("jdbc:sqlite:file:%s?mode=ro".formatted(ledger));
                var statement = connection.createStatement();
                var row = statement.executeQuery("SELECT (SELECT title FROM pieces), (SELECT count(*) FROM drafts)")) {
            assertThat(row.next()).isTrue();
            assertThat(row.getString(1)).isEqualTo("Maré, a figueira");
            assertThat(row.getInt(2)).isZero();
        }
        assertThat(Demo.tree(bag.folder())).isEqualTo(before);
    }

    @Test
    void savedSearchesComeBackFromTheBagButNotOneThatWasRemoved() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            var searches = archive.ledger().savedSearches();
            searches.save("woad on linen", "q=woad+linen&view=table", false);
            searches.remove(searches.save("never mind", "q=x", false).id());
            Bag bag = new Pack(Demo.CLOCK).pack(archive, target(), Progress.UNWATCHED);
            new Restore(Demo.CLOCK).restore(bag.folder(), around.resolve("again"), Progress.UNWATCHED);
        }
        try (Archive again = Archive.open(around.resolve("again"), Demo.CLOCK)) {
            assertThat(again.ledger().savedSearches().all())
                    .extracting(each -> each.name() + ": " + each.question())
                    .containsExactly("woad on linen: q=woad+linen&view=table");
            assertThat(again.ledger().savedSearches().removed()).isEmpty();
        }
    }

    @Test
    void theArchiveKeepsItsDraftsAndGoesOnWhileABagIsMade() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            Progress busy = new Progress() {
                private boolean written;

                @Override
                public void at(long done, long total, String what) {
                    if (what.startsWith("copying photograph") && !written) {
                        written = true;
                        archive.ledger()
                                .write(
                                        "Tomé Quarral",
                                        act -> act.create(Kinds.BOARD_PAIR, Demo.board("B10", "cut meanwhile")));
                    }
                }

                @Override
                public boolean cancelled() {
                    return false;
                }
            };
            Bag bag = new Pack(Demo.CLOCK).pack(archive, target(), busy);

            assertThat(archive.ledger().lastSequence()).isEqualTo(12);
            assertThat(bag.lastSequence()).isEqualTo(11);
            assertThat(archive.ledger().drafts().all()).hasSize(1);
            Restored restored = new Restore(Demo.CLOCK).restore(bag.folder(), around.resolve("again"), busy);
            assertThat(restored.lastHash()).isEqualTo(bag.lastHash());
        }
    }

    @Test
    void anEmptyArchiveHasABagToo() throws IOException {
        try (Archive archive = Archive.open(around.resolve("studio"), Demo.CLOCK)) {
            Bag bag = new Pack(Demo.CLOCK).pack(archive, target(), Progress.UNWATCHED);

            assertThat(bag.lastSequence()).isZero();
            assertThat(new Restore(Demo.CLOCK)
                            .restore(bag.folder(), around.resolve("again"), Progress.UNWATCHED)
                            .lastSequence())
                    .isZero();
        }
    }

    @Test
    void everyMissingAndCorruptedPhotographIsToldAndNothingIsPacked() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            List<String> photos = archive.ledger().allIdsEverUsed(Kinds.PHOTO);
            Files.delete(Demo.file(archive, new Digest(photos.get(0))));
            Files.writeString(Demo.file(archive, new Digest(photos.get(1))), "spilled");
            List<String> before = Demo.tree(around);

            assertThatThrownBy(() -> new Pack(Demo.CLOCK).pack(archive, target(), Progress.UNWATCHED))
                    .isInstanceOfSatisfying(
                            PackRefused.class,
                            refused -> assertThat(refused.findings()).hasSize(2))
                    .hasMessageContaining(photos.get(0))
                    .hasMessageContaining("its original is missing")
                    .hasMessageContaining(photos.get(1))
                    .hasMessageContaining("Nothing was changed.");
            assertThat(Demo.tree(around)).isEqualTo(before);
        }
    }

    @Test
    void damageThatIsAllowedIsNotedInTheBagAndItComesBackAsItWas() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            List<String> photos = archive.ledger().allIdsEverUsed(Kinds.PHOTO);
            Files.delete(Demo.file(archive, new Digest(photos.get(0))));
            Files.writeString(Demo.file(archive, new Digest(photos.get(1))), "spilled");

            Bag bag = new Pack(Demo.CLOCK).pack(archive, target(), DamageAdvice.NOTED, Progress.UNWATCHED);

            assertThat(bag.damage()).hasSize(2);
            assertThat(BagCheck.run(bag.folder(), Progress.UNWATCHED).info().get("tenterbook-damage"))
                    .hasSize(2);
            Restore restore = new Restore(Demo.CLOCK);
            assertThatThrownBy(() -> restore.restore(bag.folder(), around.resolve("again"), Progress.UNWATCHED))
                    .isInstanceOf(BagRefused.class)
                    .hasMessageContaining(photos.get(0))
                    .hasMessageContaining(photos.get(1));
            assertThat(around.resolve("again")).doesNotExist();
            assertThat(restore.restore(bag.folder(), around.resolve("again"), DamageAdvice.NOTED, Progress.UNWATCHED)
                            .damage())
                    .hasSize(2);
        }
    }

    @Test
    void anOrphanIsPackedIfItIsWhatItsNameSaysAndElseLeftOutAndNamed() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            Demo.photo(archive, 77, 100);
            Digest spoilt = Demo.photo(archive, 78, 100);
            Files.writeString(Demo.file(archive, spoilt), "half");
            Files.writeString(archive.folder().photos().resolve("Thumbs.db"), "x");

            Bag bag = new Pack(Demo.CLOCK).pack(archive, target(), Progress.UNWATCHED);

            assertThat(bag.photos()).isEqualTo(4);
            assertThat(bag.leftOut())
                    .hasSize(2)
                    .anyMatch(name -> name.contains(spoilt.hex()))
                    .contains("photos/Thumbs.db");
            assertThat(BagCheck.run(bag.folder(), Progress.UNWATCHED).findings())
                    .isEmpty();
        }
    }

    @Test
    void whatAKilledPackLeftIsClearedByTheNextToTheSameNameWhichSaysSo() throws IOException {
        Path dead = around.resolve(".%s.unfinished-1".formatted(target().getFileName()));
        Path alive = around.resolve(".%s.unfinished-2".formatted(target().getFileName()));
        Path others = around.resolve(".other.unfinished-3");
        for (Path left : List.of(dead, alive, others)) {
            Files.createDirectories(left.resolve("whole/data"));
            Files.writeString(left.resolve("whole/data/ledger.db"), "half of it");
        }
        Files.writeString(dead.resolve("in-use.lock"), "");
        try (Archive archive = Demo.open(around.resolve("studio"));
                ArchiveFolder held = ArchiveFolder.hold(alive)) {
            assertThat(held.root()).isEqualTo(alive);

            Bag bag = new Pack(Demo.CLOCK).pack(archive, target(), Progress.UNWATCHED);

            assertThat(bag.notes())
                    .extracting(Finding::toString)
                    .containsExactly(
                            dead + ": was left unfinished by work on the same target that was killed; it was deleted.");
        }
        assertThat(dead).doesNotExist();
        assertThat(alive.resolve("whole/data/ledger.db")).exists();
        assertThat(others.resolve("whole/data/ledger.db")).exists();
    }

    @Test
    void aTargetThatIsThereOrHasNoParentOrLiesInTheArchiveIsRefused() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            Files.createDirectory(target());
            List<String> before = Demo.tree(around);
            Pack pack = new Pack(Demo.CLOCK);

            assertThatThrownBy(() -> pack.pack(archive, target(), Progress.UNWATCHED))
                    .isInstanceOf(PackRefused.class)
                    .hasMessageContaining("is already there; expected a name that is free");
            assertThatThrownBy(() -> pack.pack(archive, around.resolve("no/bag"), Progress.UNWATCHED))
                    .isInstanceOf(PackRefused.class)
                    .hasMessageContaining("Make that folder first");
            assertThatThrownBy(() -> pack.pack(archive, around.resolve("studio/bag"), Progress.UNWATCHED))
                    .isInstanceOf(PackRefused.class)
                    .hasMessageContaining("lies inside the archive itself");
            assertThat(Demo.tree(around)).isEqualTo(before);
        }
    }

    @Test
    void packingStopsWhenAskedAtAnyPointAndLeavesNothing() throws IOException {
        try (Archive archive = Demo.open(around.resolve("studio"))) {
            List<String> before = Demo.tree(around);
            int stops = 0;
            for (int at = 1; at < 500 && !Files.exists(target()); at += 3) {
                Stopping stopping = new Stopping(at);
                try {
                    new Pack(Demo.CLOCK).pack(archive, target(), stopping);
                } catch (Progress.Cancelled e) {
                    stops++;
                    assertThat(Demo.tree(around)).isEqualTo(before);
                }
            }
            assertThat(stops).isGreaterThan(5);
            assertThat(target()).isDirectory();
        }
    }
}
