package tenterbook.app;

import static org.assertj.core.api.Assertions.assertThat;
import static tenterbook.app.Ran.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.record.IssuedPaper;
import tenterbook.imaging.Photo;
import tenterbook.ledger.file.Progress;
import tenterbook.material.Cloth;
import tenterbook.material.ClothId;
import tenterbook.material.FibreShare;
import tenterbook.measure.Digest;
import tenterbook.measure.Quantity;
import tenterbook.piece.Category;
import tenterbook.piece.MadeIn;
import tenterbook.piece.Party;
import tenterbook.piece.PartyId;
import tenterbook.piece.Piece;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Studio;
import tenterbook.recipe.Clamping;
import tenterbook.recipe.ClampingId;
import tenterbook.recipe.Cut;
import tenterbook.search.PieceIndex;
import tenterbook.search.index.OutsideFacets;

/** The commands, as a script runs them: what they print, what they leave, and the code they end with. */
class CommandsTest {
    @TempDir
    Path around;

    private Path studio;
    private Path photo;

    @BeforeEach
    void fill() throws IOException {
        studio = around.resolve("studio");
        byte[] bytes = "stands for a photograph: a bag keeps bytes".getBytes(StandardCharsets.US_ASCII);
        Digest digest = Digest.of(bytes);
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            photo = archive.folder()
                    .photos()
                    .resolve(digest.hex().substring(0, 2))
                    .resolve(digest.hex() + ".jpg");
            Files.createDirectories(photo.getParent());
            Files.write(photo, bytes);
            archive.ledger().write("Inês Valderim", act -> {
                act.create(
                        Kinds.STUDIO,
                        new Studio(
                                "Oficina Valderim",
                                "Inês Valderim",
                                "Porto Sarelho",
                                "Portugal",
                                "",
                                "",
                                null,
                                null,
                                ""));
                act.create(
                        Kinds.CLOTH,
                        new Cloth(
                                new ClothId("SH"),
                                "silk habotai",
                                List.of(new FibreShare("silk", 100.0, "")),
                                "",
                                null,
                                null,
                                "",
                                "",
                                "",
                                "China",
                                null,
                                null,
                                null,
                                ""));
                act.create(
                        Kinds.PHOTO,
                        new Photo(
                                digest,
                                "a.jpg",
                                bytes.length,
                                "image/jpeg",
                                4,
                                3,
                                1,
                                null,
                                null,
                                null,
                                null,
                                false,
                                true,
                                List.of(),
                                List.of(),
                                Photo.UNCALIBRATED,
                                List.of()));
                act.create(
                        Kinds.CLAMPING,
                        new Clamping(
                                new ClampingId("C24-001"),
                                "",
                                null,
                                null,
                                null,
                                List.of(new Cut(new ClothId("SH"), null, null, null, null)),
                                null,
                                null,
                                "",
                                "",
                                "",
                                "",
                                null,
                                null,
                                null,
                                null));
                act.create(
                        Kinds.PIECE,
                        piece("V24-001", "Figueira", List.of(new MadeIn(new ClampingId("C24-001"), null, "")), digest));
                return act.create(Kinds.PIECE, piece("V24-002", "Found in a drawer", List.of(), null));
            });
        }
    }

    private static Piece piece(String number, String title, List<MadeIn> made, Digest photo) {
        return new Piece(
                new PieceNumber(number),
                title,
                "",
                Category.SCARF,
                Quantity.UNRECORDED,
                null,
                null,
                null,
                "",
                made,
                null,
                null,
                "",
                null,
                "",
                photo == null ? List.of() : List.of(new PiecePhoto(photo, null, "", 1, null)),
                null,
                null,
                null,
                "",
                null);
    }

    @Test
    void aCheckOfAWholeArchiveEndsWithZero() {
        Ran ran = run("check", "--archive", studio);
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out()).contains("Nothing is wrong").contains("6 revisions");
        assertThat(ran.code()).isZero();
    }

    @Test
    void aCheckFindsADamagedAndAMissingPhotograph() throws IOException {
        Files.writeString(photo, "other bytes");
        Ran changed = run("check", "--archive", studio);
        assertThat(changed.code()).isEqualTo(1);
        assertThat(changed.out()).contains(photo.getFileName().toString()).contains("wrong");
        Files.delete(photo);
        Ran missing = run("check", "--archive", studio);
        assertThat(missing.code()).isEqualTo(1);
        assertThat(missing.out()).contains(photo.getFileName().toString().substring(0, 12));
    }

    /** Does to the ledger what only someone outside the program can. */
    private void alter(String... statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + studio.resolve("ledger.db"));
                Statement statement = connection.createStatement()) {
            statement.execute("DROP TRIGGER revisions_are_never_changed");
            statement.execute("DROP TRIGGER revisions_are_never_deleted");
            for (String each : statements) {
                statement.execute(each);
            }
        }
    }

    @Test
    void aCheckFindsARevisionThatWasAltered() throws SQLException {
        alter("UPDATE revisions SET record = replace(record, 'Figueira', 'Oliveira')");
        Ran ran = run("check", "--archive", studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.out()).contains("revision 5");
        assertThat(ran.err()).isEmpty();
    }

    @Test
    void aCheckTellsWhatItFoundEvenWhereARecordCannotBeReadAnyMore() throws SQLException {
        alter("UPDATE revisions SET record = '[1]' WHERE sequence = 5");
        Ran ran = run("check", "--archive", studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.out()).contains("revision 5");
        assertThat(ran.err()).doesNotContain("\tat ");
    }

    @Test
    void aCheckFindsARevisionThatWasTakenOut() throws SQLException {
        alter(
                "PRAGMA foreign_keys = OFF",
                "DELETE FROM current WHERE sequence = 6",
                "DELETE FROM revisions WHERE sequence = 4");
        Ran ran = run("check", "--archive", studio);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).doesNotContain("\tat ");
    }

    private boolean onTheDisk(String text) throws IOException {
        String wanted = new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.ISO_8859_1);
        try (Stream<Path> files = Files.walk(studio)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                if (Files.readString(file, StandardCharsets.ISO_8859_1).contains(wanted)) {
                    return true;
                }
            }
        }
        return false;
    }

    @Test
    void aPersonIsErasedFromLedgerDraftsAndIndexOnceTheNameIsRepeated() throws IOException {
        try (Archive archive = Archive.open(studio, Clock.systemUTC());
                PieceIndex index = PieceIndex.open(archive, OutsideFacets.NONE)) {
            archive.ledger().write("Inês Valderim", act -> {
                act.create(
                        Kinds.PARTY, new Party(new PartyId("almorena"), "Brites Almorena", "buyer", "Rua do Sal", ""));
                Piece piece = act.find(Kinds.PIECE, "V24-001").orElseThrow();
                return act.save(Kinds.PIECE, heldBy(piece, "almorena", "Almorenas hallway"), 1, "");
            });
            IssuedPaper.Pdf pdf =
                    archive.papers().store("%PDF Lent to Brites Almorena".getBytes(StandardCharsets.UTF_8));
            archive.ledger()
                    .write(
                            "Inês Valderim",
                            act -> act.create(
                                    Kinds.ISSUED_PAPER,
                                    new IssuedPaper(
                                            "paper-1",
                                            "loan-schedule",
                                            "",
                                            "",
                                            List.of(),
                                            Instant.EPOCH,
                                            List.of(),
                                            null,
                                            List.of(new IssuedPaper.Line("party", "Brites Almorena", "")),
                                            "",
                                            pdf)));
            archive.ledger().drafts().keep("piece/V24-009", "for Brites Almorena");
            index.reindex(Progress.UNWATCHED);
        }
        assertThat(onTheDisk("almorena")).isTrue();

        Ran slip = run("erase", "--archive", studio, "--party", "almorena", "--confirm", "almorina");
        assertThat(slip.code()).isEqualTo(1);
        assertThat(slip.out()).contains("Nothing was erased");
        assertThat(onTheDisk("almorena")).isTrue();

        Ran ran = run("erase", "--archive", studio, "--party", "almorena", "--confirm", "almorena");
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isZero();
        assertThat(ran.out())
                .contains("the party’s record, in its one revision", "one unsaved form")
                .contains("piece V24-001, issued-paper paper-1", "one stored PDF file: of an issued paper")
                .contains("bags packed before", "printed paper");
        for (String trace : List.of("almorena", "Almorena", "Brites", "Rua do Sal", "hallway")) {
            assertThat(onTheDisk(trace)).as(trace).isFalse();
        }
        assertThat(run("check", "--archive", studio).code()).isZero();
        Ran again = run("erase", "--archive", studio, "--party", "almorena", "--confirm", "almorena");
        assertThat(again.code()).isEqualTo(3);
        assertThat(again.err()).contains("There is no party almorena in this archive. Nothing was erased.");
    }

    private static Piece heldBy(Piece piece, String holder, String place) {
        return new Piece(
                piece.number(),
                piece.title(),
                "",
                piece.category(),
                null,
                null,
                null,
                null,
                "",
                piece.made(),
                null,
                new PartyId(holder),
                place,
                null,
                "",
                piece.photos(),
                null,
                null,
                null,
                "",
                null);
    }

    @Test
    void aPieceIsProvenToAStrangerAndAnAlteredProofIsNot() throws IOException {
        Path proof = around.resolve("proof.json");
        Ran made = run("prove", "--archive", studio, "--piece", "V24-001", "--to", proof, "--made");
        assertThat(made.err()).isEmpty();
        assertThat(made.code()).isZero();

        Ran good = run("verify", proof);
        assertThat(good.code()).isZero();
        assertThat(good.out())
                .contains("The proof holds. It shows:", "piece V24-001, version 1", "It does not show:", "kept back");

        Files.writeString(proof, Files.readString(proof).replace("Figueira", "Oliveira"));
        Ran bad = run("verify", proof);
        assertThat(bad.code()).isEqualTo(1);
        assertThat(bad.out()).contains("the public part of revision").contains("The proof does not hold.");
    }

    @Test
    void aCheckChangesNothing() throws IOException {
        run("check", "--archive", studio);
        byte[] ledger = Files.readAllBytes(studio.resolve("ledger.db"));
        byte[] bytes = Files.readAllBytes(photo);
        run("check", "--archive", studio);
        assertThat(Files.readAllBytes(studio.resolve("ledger.db"))).isEqualTo(ledger);
        assertThat(Files.readAllBytes(photo)).isEqualTo(bytes);
    }

    @Test
    void whatIsPackedIsRestored() {
        Path bag = around.resolve("bag");
        assertThat(run("pack", "--archive", studio, "--to", bag).code()).isZero();
        Path restored = around.resolve("restored");
        Ran ran = run("restore", "--from", bag, "--archive", restored);
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isZero();
        assertThat(run("check", "--archive", restored).code()).isZero();
        try (Archive archive = Archive.open(restored, Clock.systemUTC())) {
            assertThat(archive.piece("V24-001").orElseThrow().title()).isEqualTo("Figueira");
        }

        Ran twice = run("pack", "--archive", studio, "--to", bag);
        assertThat(twice.code()).isEqualTo(1);
        assertThat(twice.err()).contains(bag.toString()).doesNotContain("\tat ");
        Ran full = run("restore", "--from", bag, "--archive", restored);
        assertThat(full.code()).isIn(1, 3);
        assertThat(full.err()).isNotBlank().doesNotContain("\tat ");
    }

    @Test
    void aTamperedBagIsRefusedAndLeavesNothing() throws IOException {
        Path bag = around.resolve("bag");
        run("pack", "--archive", studio, "--to", bag);
        Path inBag;
        try (Stream<Path> files = Files.walk(bag)) {
            inBag = files.filter(file -> file.toString().endsWith(".jpg"))
                    .findFirst()
                    .orElseThrow();
        }
        Files.writeString(inBag, "other bytes");
        Path restored = around.resolve("restored");
        Ran ran = run("restore", "--from", bag, "--archive", restored);
        assertThat(ran.code()).isEqualTo(1);
        assertThat(ran.err()).contains(inBag.getFileName().toString()).doesNotContain("\tat ");
        assertThat(restored).doesNotExist();
        Ran none = run("restore", "--from", around.resolve("nowhere"), "--archive", restored);
        assertThat(none.code()).isEqualTo(1);
        assertThat(none.err()).contains("nowhere").doesNotContain("\tat ");
        assertThat(restored).doesNotExist();
    }

    @Test
    void labelsArePrintedToAFile() throws IOException {
        Path pdf = around.resolve("labels.pdf");
        Ran ran = run(
                "labels",
                "--archive",
                studio,
                "--kind",
                "hang-tag",
                "--pieces",
                "V24-001",
                "--market",
                "us",
                "--copies",
                "3",
                "--out",
                pdf);
        assertThat(ran.err()).isEmpty();
        assertThat(ran.code()).isZero();
        assertThat(ran.out()).contains("Wrote 3 labels");
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(new PDFTextStripper().getText(document))
                    .contains("V24-001")
                    .contains("Figueira");
        }
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            assertThat(archive.ledger().count(Kinds.ISSUED_PAPER)).isEqualTo(1);
            IssuedPaper paper =
                    archive.ledger().latest(Kinds.ISSUED_PAPER, 1).get(0).record();
            assertThat(archive.papers().read(paper.pdf())).as("the same file").isEqualTo(Files.readAllBytes(pdf));
        }
    }

    @Test
    void labelsThatCannotBePrintedAreRefusedAndNothingIsIssued() {
        Path pdf = around.resolve("labels.pdf");
        for (String[] words : new String[][] {
            {"hang-tag", "V24-002", "us", pdf.toString()},
            {"hang-tag", "V24-001,V99-999", "us", pdf.toString()},
            {"banner", "V24-001", "us", pdf.toString()},
            {"hang-tag", "V24-001", "mars", pdf.toString()},
            {"hang-tag", "V24-001", "us", around.resolve("no/such/labels.pdf").toString()},
            {"hang-tag", "V24-001", "us", around.toString()}
        }) {
            Ran ran = run(
                    "labels",
                    "--archive",
                    studio,
                    "--kind",
                    words[0],
                    "--pieces",
                    words[1],
                    "--market",
                    words[2],
                    "--out",
                    words[3]);
            assertThat(ran.code()).as(String.join(" ", words)).isEqualTo(1);
            assertThat(ran.err()).as(String.join(" ", words)).isNotBlank().doesNotContain("\tat ");
        }
        assertThat(pdf).doesNotExist();
        try (Archive archive = Archive.open(studio, Clock.systemUTC())) {
            assertThat(archive.ledger().count(Kinds.ISSUED_PAPER)).isZero();
        }
    }

    @Test
    void anArchiveThatIsNotThereIsToldAndNotMade() {
        Path nowhere = around.resolve("nowhere");
        for (Object[] words : new Object[][] {
            {"check", "--archive", nowhere},
            {"reindex", "--archive", nowhere},
            {"pack", "--archive", nowhere, "--to", around.resolve("bag")},
            {
                "labels",
                "--archive",
                nowhere,
                "--kind",
                "hang-tag",
                "--pieces",
                "V24-001",
                "--market",
                "us",
                "--out",
                around.resolve("labels.pdf")
            }
        }) {
            Ran ran = run(words);
            assertThat(ran.code()).isEqualTo(3);
            assertThat(ran.err()).contains("There is no archive in").contains("nowhere");
        }
        assertThat(nowhere).doesNotExist();
    }

    @Test
    void aFileThatIsNoLedgerIsToldAndLeftAlone() throws IOException {
        Path folder = Files.createDirectories(around.resolve("odd"));
        byte[] bytes =
                "this is not a database, but it was somebody's file".repeat(40).getBytes(StandardCharsets.UTF_8);
        Files.write(folder.resolve("ledger.db"), bytes);
        Ran ran = run("check", "--archive", folder);
        assertThat(ran.code()).isEqualTo(3);
        assertThat(ran.err()).contains("cannot be opened").doesNotContain("\tat ");
        assertThat(Files.readAllBytes(folder.resolve("ledger.db"))).isEqualTo(bytes);
    }

    @Test
    void anArchiveInUseIsNotOpenedTwice() {
        try (Archive held = Archive.open(studio, Clock.systemUTC())) {
            assertThat(held.ledger().lastSequence()).isEqualTo(6);
            Ran ran = run("check", "--archive", studio);
            assertThat(ran.code()).isEqualTo(3);
            assertThat(ran.err()).contains("already open");
        }
    }

    @Test
    void theIndexIsBuiltAnew() {
        assertThat(run("reindex", "--archive", studio).code()).isZero();
        assertThat(run("check", "--archive", studio).code()).isZero();
    }

    @Test
    void aCommandThatIsNotUnderstoodEndsWithTwo() {
        for (Object[] words : new Object[][] {
            {"dance"}, {"check", "--colour"}, {"pack"}, {"labels", "--kind", "hang-tag"}, {"serve", "--port", "many"}
        }) {
            Ran ran = run(words);
            assertThat(ran.code()).isEqualTo(2);
            assertThat(ran.err()).isNotBlank();
        }
    }

    @Test
    void helpListsEveryCommandAndEveryExitCode() {
        Ran ran = run("--help");
        assertThat(ran.code()).isZero();
        assertThat(ran.out())
                .contains("serve", "check", "pack", "restore", "reindex", "labels")
                .contains("Exit codes", "0  done", "1  ", "2  ", "3  ", "4  ");
        for (String command : Main.commandLine().getSubcommands().keySet()) {
            assertThat(run(command, "--help").code()).isZero();
        }
        assertThat(run("--version").out()).contains("Tenterbook");
    }

    @Test
    void photographsOfAFolderAreTakenInAndWhatIsNoneIsTold() throws IOException {
        Path from = Files.createDirectories(around.resolve("camera"));
        Path cloth = Path.of("sample-archive", "data", "photos");
        try (Stream<Path> files = Files.walk(cloth)) {
            List<Path> some = files.filter(file -> file.toString().endsWith(".jpg"))
                    .sorted()
                    .limit(2)
                    .toList();
            Files.copy(some.get(0), from.resolve("one.jpg"));
            Files.copy(some.get(1), from.resolve("two.jpg"));
        }
        Ran good = run("photos", "--archive", studio, "--from", from);
        assertThat(good.code()).as(good.err()).isZero();
        assertThat(good.out()).contains("2 new photographs were added.");
        Files.writeString(from.resolve("notes.txt"), "four dips");
        Ran bad = run("photos", "--archive", studio, "--from", from);
        assertThat(bad.code()).isEqualTo(1);
        assertThat(bad.out()).contains("notes.txt:", "2 were there already; 1 was not added.");
        Ran nowhere = run("photos", "--archive", studio, "--from", around.resolve("not there"));
        assertThat(nowhere.code()).isEqualTo(1);
        assertThat(nowhere.err()).contains("Expected a folder that is there");
    }

    @Test
    void everyCommandAndEveryOptionSaysWhatItIsFor() {
        CommandLine program = Main.commandLine();
        List<CommandLine> all = new ArrayList<>(program.getSubcommands().values());
        all.add(program);
        for (CommandLine command : all) {
            CommandLine.Model.CommandSpec spec = command.getCommandSpec();
            assertThat(spec.usageMessage().description()).as(spec.name()).isNotEmpty();
            assertThat(spec.args())
                    .allSatisfy(arg -> assertThat(arg.description())
                            .as(spec.name() + " " + arg)
                            .isNotEmpty());
        }
    }
}
