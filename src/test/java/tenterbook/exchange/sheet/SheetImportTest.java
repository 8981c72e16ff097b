package tenterbook.exchange.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.exchange.sheet.ColumnPlan.Chosen;
import tenterbook.exchange.sheet.ColumnPlan.DayOrder;
import tenterbook.exchange.sheet.file.SheetFile;
import tenterbook.imaging.Photo;
import tenterbook.ledger.file.Progress;
import tenterbook.measure.Digest;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.piece.Status;

/** A maker's own lists, brought in with a verdict for each row, and taken back as one. */
class SheetImportTest {
    @TempDir
    Path folder;

    private Archive archive;

    @BeforeEach
    void open() {
        archive = Archive.open(folder.resolve("studio"), Clock.systemUTC());
    }

    @AfterEach
    void close() {
        archive.close();
    }

    private Path file(String text) throws IOException {
        return Files.writeString(Files.createTempFile(folder, "sheet", ".csv"), text);
    }

    private static ColumnProposal proposal(SheetKind kind, Path file) {
        return new ColumnProposal(kind, SheetHead.of(SheetFile.of(file), kind));
    }

    private SheetImport importing(SheetKind kind, Path file, boolean update) {
        return new SheetImport(archive, file, kind, proposal(kind, file).plan(), new ImportChoices(update, false));
    }

    private List<String> judged(SheetKind kind, Path file, boolean update) {
        List<String> verdicts = new ArrayList<>();
        importing(kind, file, update)
                .judge(
                        Progress.UNWATCHED,
                        row -> verdicts.add(row.row() + " " + row.verdict() + " " + row.id()
                                + row.why().stream()
                                        .map(why -> ": " + why.inEnglish())
                                        .collect(Collectors.joining())));
        return verdicts;
    }

    private SheetImport.Counts written(SheetKind kind, String id, String text) throws IOException {
        return importing(kind, file(text), true).write(id, 0, Progress.UNWATCHED, row -> {});
    }

    private Piece piece(String number) {
        return archive.piece(number).orElseThrow();
    }

    @Test
    void columnsAreProposedByTheirNamesInTwoLanguagesAndByWhatIsInThem() throws IOException {
        assertThat(proposal(SheetKind.PIECES, file("Nº da peça;Título;Comprimento (cm);Data\nV1;x;20;2024\n"))
                        .plan()
                        .columns())
                .extracting(Chosen::path, Chosen::unit)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("number", ""),
                        org.assertj.core.groups.Tuple.tuple("title", ""),
                        org.assertj.core.groups.Tuple.tuple("length", "cm"),
                        org.assertj.core.groups.Tuple.tuple("finished", ""));
        assertThat(proposal(
                                SheetKind.PIECES,
                                file(
                                        "what,asked,made\nV24-001,€ 180,25/03/2024\nV24-002,$ 90,3/4/2024\nV24-003,€ 5,2021\n"))
                        .plan()
                        .columns())
                .extracting(Chosen::path, Chosen::order)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("number", DayOrder.NOT_SAID),
                        org.assertj.core.groups.Tuple.tuple("price", DayOrder.NOT_SAID),
                        org.assertj.core.groups.Tuple.tuple("finished", DayOrder.DAY_FIRST));
    }

    @Test
    void whatAMakerWritesIsReadAsAFormReadsIt() throws IOException {
        Path file = file("""
                number,title,length (in),width,weight,date,price,status
                V24-001,Tide,6ish,about 40 cm,1/2 lb,March 2024,€ 180,in stock
                V24-002,Reeds,6 to 8,~30,300,2021,$ 95.50,Vendida
                V24-003,=cmd|x,20 cm,,forgot,25/03/2024,,
                """);
        assertThat(judged(SheetKind.PIECES, file, true))
                .containsExactly("2 new V24-001", "3 new V24-002", "4 new V24-003");
        importing(SheetKind.PIECES, file, true).write("a", 3, Progress.UNWATCHED, row -> {});
        Piece tide = piece("V24-001");
        assertThat(tide.length().entered()).isEqualTo("6ish in");
        assertThat(tide.length().low()).isEqualTo(6.0);
        assertThat(tide.length().about()).isTrue();
        assertThat(tide.mass().low()).isEqualTo(0.5);
        assertThat(tide.finished().entered()).isEqualTo("March 2024");
        assertThat(tide.price()).hasToString("180\u00a0EUR");
        assertThat(tide.status()).isEqualTo(Status.IN_STOCK);
        Piece reeds = piece("V24-002");
        assertThat(reeds.length().high()).isEqualTo(8.0);
        assertThat(reeds.price().currency().getCurrencyCode()).isEqualTo("USD");
        assertThat(reeds.status()).isEqualTo(Status.SOLD);
        assertThat(piece("V24-003").title()).isEqualTo("=cmd|x");
        assertThat(piece("V24-003").finished().from()).hasToString("2024-03-25");
    }

    @Test
    void everyRowHasItsVerdictBeforeAnythingIsWritten() throws IOException {
        written(SheetKind.PIECES, "a", "number,title,price\nV1,Tide,180\nV2,Reeds,90\nV3,Moon,70\n");
        long before = archive.ledger().lastSequence();
        Path file = file(
                "number,title,price,status\nV1,Tide,180,\nV2,Reeds,95,\nV4,New,none of it,\nV5,x,,nowhere\nV6,y,,\nV6,z,,\n,w,,\n");
        List<String> update = judged(SheetKind.PIECES, file, true);
        assertThat(update.subList(0, 2)).containsExactly("2 unchanged V1", "3 updated V2");
        assertThat(update.get(2)).startsWith("4 refused V4: price").contains("none of it");
        assertThat(update.get(3)).startsWith("5 refused V5").contains("nowhere");
        assertThat(update.get(5)).isEqualTo("7 refused V6: “V6” stands in row 6 already; this row is not brought in.");
        assertThat(update.get(6)).startsWith("8 refused : “number” was expected");
        assertThat(judged(SheetKind.PIECES, file, false).get(1)).isEqualTo("3 left V2");
        assertThat(archive.ledger().lastSequence()).isEqualTo(before);
    }

    @Test
    void aSheetOfFormerTimesKeepsItsStatusAndDoesNotReplaceWhatIsRecorded() throws IOException {
        written(SheetKind.PIECES, "a", "number,title,status\nV1,Tide,sold\nV2,Reeds,\n");
        assertThat(piece("V1").status()).isEqualTo(Status.SOLD);
        assertThat(judged(SheetKind.PIECES, file("number,status\nV1,sold\nV1,lost\nV2,lost\n"), true))
                .satisfiesExactly(
                        same -> assertThat(same).contains("unchanged V1"),
                        twice -> assertThat(twice).contains("refused V1"),
                        other -> assertThat(other).contains("refused V2", "Record “Lost”"));
    }

    @Test
    void anEmptyCellErasesNothingAndAnEmptyDateMeansTheOneAboveOnlyWhereChosen() throws IOException {
        Path file = file("number,title,finished\nV1,a,2024-03-05\nV2,b,\nV3,c,2023\nV4,d,\n");
        ColumnProposal proposal = proposal(SheetKind.PIECES, file);
        Chosen date = proposal.plan().columns().get(2);
        assertThat(proposal.hasGaps(date)).isTrue();
        assertThat(proposal.hasGaps(proposal.plan().columns().get(1))).isFalse();
        importing(SheetKind.PIECES, file, true).write("a", 0, Progress.UNWATCHED, row -> {});
        assertThat(piece("V2").finished().recorded()).isFalse();
        List<Chosen> columns = new ArrayList<>(proposal.plan().columns());
        columns.set(2, new Chosen(2, "finished", "", DayOrder.NOT_SAID, true));
        new SheetImport(archive, file, SheetKind.PIECES, new ColumnPlan(columns), ImportChoices.USUAL)
                .write("b", 0, Progress.UNWATCHED, row -> {});
        assertThat(piece("V2").finished().entered()).isEqualTo("2024-03-05");
        assertThat(piece("V4").finished().entered()).isEqualTo("2023");
        written(SheetKind.PIECES, "c", "number,title,finished\nV2,,\n");
        assertThat(piece("V2").title()).isEqualTo("b");
    }

    @Test
    void peopleWithoutAShortNameAreFoundByNameAndGetOneOtherwise() throws IOException {
        String people = "Name,E-mail\nInês Valderim,ines@example.org\nGaleria Norte,\nInês Valderim,\n";
        Path file = file(people);
        assertThat(judged(SheetKind.PEOPLE, file, true).get(0)).isEqualTo("2 new ines-valderim");
        assertThat(judged(SheetKind.PEOPLE, file, true).get(2)).contains("refused ines-valderim");
        written(SheetKind.PEOPLE, "a", people);
        assertThat(judged(SheetKind.PEOPLE, file, true).subList(0, 2))
                .containsExactly("2 unchanged ines-valderim", "3 unchanged galeria-norte");
        written(SheetKind.CLOTHS, "b", "cloth,momme,fibre,percent\nSilk habotai,16,silk,100\n");
        assertThat(archive.cloth("silk-habotai").orElseThrow().arealWeight().entered())
                .isEqualTo("16 momme");
        assertThat(archive.cloth("silk-habotai").orElseThrow().content()).hasSize(1);
    }

    @Test
    void salesBecomeEventsOfPiecesAndAreNotDoubled() throws IOException {
        written(SheetKind.PEOPLE, "a", "Name\nGaleria Norte\n");
        written(SheetKind.PIECES, "b", "number,title\nV1,Tide\nV2,Reeds\n");
        String sales = "piece,date,buyer,price\nV1,2024-05-01,Galeria Norte,€ 180\nV2,2024,Nobody known,1\nV9,2024,,\n";
        Path file = file(sales);
        List<String> verdicts = judged(SheetKind.SALES, file, true);
        assertThat(verdicts.get(0)).isEqualTo("2 updated V1");
        assertThat(verdicts.get(1)).contains("refused V2", "Nobody called “Nobody known” is recorded");
        assertThat(verdicts.get(2)).contains("refused V9", "There is no piece “V9”");
        written(SheetKind.SALES, "c", sales);
        Piece sold = piece("V1");
        assertThat(sold.events()).hasSize(1);
        assertThat(sold.events().get(0).party()).hasToString("galeria-norte");
        assertThat(judged(SheetKind.SALES, file, true).get(0)).isEqualTo("2 unchanged V1");
        written(SheetKind.SALES, "d", "piece,date,where\nV1,2024-05-01,Feira\n");
        assertThat(piece("V1").events()).hasSize(1);
        assertThat(piece("V1").events().get(0).place()).isEqualTo("Feira");
        assertThat(piece("V1").events().get(0).price()).isNotNull();
    }

    @Test
    void anImportIsTakenBackAsOneExceptWhatWasChangedSince() throws IOException {
        written(SheetKind.PIECES, "first", "number,title\nV1,Tide\nV2,Reeds\n");
        written(SheetKind.PIECES, "second", "number,title\nV1,Tide II\nV2,Reeds II\nV3,Moon\nV4,Fern\n");
        written(SheetKind.PIECES, "later", "number,notes\nV2,changed since\n");
        ImportUndo.Report report = ImportUndo.undo(archive, "second", 0, Progress.UNWATCHED);
        assertThat(report.withdrawn()).isEqualTo(2);
        assertThat(report.restored()).isEqualTo(1);
        assertThat(report.left()).hasSize(1);
        assertThat(report.left().get(0).inEnglish()).contains("“V2” was changed since");
        assertThat(piece("V1").title()).isEqualTo("Tide");
        assertThat(piece("V2").title()).isEqualTo("Reeds II");
        assertThat(archive.piece("V3")).isEmpty();
        ImportUndo.Report again = ImportUndo.undo(archive, "second", 0, Progress.UNWATCHED);
        assertThat(again.withdrawn() + again.restored()).isZero();
        // Imported again after the undo, the withdrawn ones come back.
        assertThat(written(SheetKind.PIECES, "third", "number,title\nV3,Moon\n").of(Verdict.NEW))
                .isEqualTo(1);
        assertThat(piece("V3").title()).isEqualTo("Moon");
        assertThatThrownBy(() -> ImportUndo.undo(archive, "never", 0, Progress.UNWATCHED))
                .hasMessageContaining("nothing of the import never");
    }

    @Test
    void aRecordThatIsNamedSinceStaysAndIsListed() throws IOException {
        written(SheetKind.PEOPLE, "people", "Name\nGaleria Norte\nAda\n");
        written(SheetKind.PIECES, "pieces", "number,title,owner\nV1,Tide,Galeria Norte\n");
        ImportUndo.Report report = ImportUndo.undo(archive, "people", 0, Progress.UNWATCHED);
        assertThat(report.withdrawn()).isEqualTo(1);
        assertThat(report.left()).hasSize(1);
        assertThat(archive.party("galeria-norte")).isPresent();
        assertThat(archive.party("ada")).isEmpty();
    }

    @Test
    void aStoppedImportKeepsItsWholeBatchesAndIsTakenBackToo() throws IOException {
        StringBuilder many = new StringBuilder("number,title\n");
        for (int i = 1; i <= 450; i++) {
            many.append("V").append(1000 + i).append(",x\n");
        }
        Progress stopping = new Progress() {
            private int asked;

            @Override
            public void at(long done, long total, String what) {}

            @Override
            public boolean cancelled() {
                return ++asked > 420;
            }
        };
        assertThatThrownBy(() -> importing(SheetKind.PIECES, file(many.toString()), true)
                        .write("stopped", 0, stopping, row -> {}))
                .isInstanceOf(Progress.Cancelled.class);
        assertThat(archive.ledger().count(Kinds.PIECE)).isEqualTo(400);
        assertThat(ImportUndo.undo(archive, "stopped", 0, Progress.UNWATCHED).withdrawn())
                .isEqualTo(400);
        assertThat(archive.ledger().count(Kinds.PIECE)).isZero();
    }

    @Test
    void aPlanThatCannotBeIsRefused() throws IOException {
        Path file = file("a,b\n1,2\n");
        assertThatThrownBy(() -> new SheetImport(
                        archive, file, SheetKind.PIECES, new ColumnPlan(List.of()), ImportChoices.USUAL))
                .hasMessageContaining("“number”");
        Chosen number = new Chosen(0, "number", "", DayOrder.NOT_SAID, false);
        assertThatThrownBy(() -> new SheetImport(
                        archive, file, SheetKind.PIECES, new ColumnPlan(List.of(number, number)), ImportChoices.USUAL))
                .hasMessageContaining("Two columns");
        assertThat(ColumnPlan.fromJson(new ColumnPlan(List.of(number)).toJson()))
                .isEqualTo(new ColumnPlan(List.of(number)));
    }

    @Test
    void aPersonOfWhomNobodyIsRecordedIsMadeNewByChoiceAndGoesWithTheImport() throws IOException {
        written(SheetKind.PIECES, "a", "number,title\nV1,Tide\nV2,Reeds\nV3,Moon\n");
        Path sales = file(
                "piece,buyer,date\nV1,Ana Quental,2024-05-01\nV2,ana quental,2024-05-02\nV9,Nobody Yet,2024-05-03\n");
        assertThat(judged(SheetKind.SALES, sales, true).get(0))
                .contains("Nobody called “Ana Quental” is recorded", "‘record a new person’");
        SheetImport sheet = new SheetImport(
                archive,
                sales,
                SheetKind.SALES,
                proposal(SheetKind.SALES, sales).plan(),
                new ImportChoices(true, true));
        assertThat(sheet.judge(Progress.UNWATCHED, row -> {}).of(Verdict.UPDATED))
                .isEqualTo(2);
        assertThat(archive.ledger().count(Kinds.PARTY)).isZero();
        sheet.write("b", 0, Progress.UNWATCHED, row -> {});
        assertThat(archive.ledger().all(Kinds.PARTY))
                .as("none for the refused row")
                .extracting(saved -> saved.record().name())
                .containsExactly("Ana Quental");
        assertThat(piece("V2").events().get(0).party()).hasToString("ana-quental");
        assertThat(ImportUndo.undo(archive, "b", 0, Progress.UNWATCHED).left()).isEmpty();
        assertThat(archive.ledger().count(Kinds.PARTY)).isZero();
    }

    @Test
    void aChosenColumnGoesBeforeTheProposal() throws IOException {
        Path file = file("No,Name,Title\nV1,Tide,dull\n");
        ColumnProposal proposal = proposal(SheetKind.PIECES, file);
        assertThat(proposal.plan(java.util.Map.of("name", "title", "No", "number"))
                        .columns())
                .extracting(Chosen::at, Chosen::path)
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple(0, "number"),
                        org.assertj.core.groups.Tuple.tuple(1, "title"));
        assertThat(proposal.plan(java.util.Map.of("Name", "")).columns())
                .as("the proposal has the second column as the title")
                .extracting(Chosen::path)
                .containsExactly("number");
        assertThatThrownBy(() -> proposal.plan(java.util.Map.of("Maker", "title")))
                .hasMessage("The sheet has no column “Maker”. It has: No, Name, Title.");
        assertThatThrownBy(() -> proposal.plan(java.util.Map.of("Name", "wings")))
                .hasMessage("There is no field “wings” to bring in.");
    }

    private Digest photograph(String name, String bytes) {
        Digest digest = Digest.of(bytes.getBytes(StandardCharsets.UTF_8));
        Photo photo = Kinds.PHOTO
                .codec()
                .fromText("{\"digest\": \"" + digest.hex() + "\", \"originalName\": \"" + name + "\"}");
        archive.ledger().write("maker", act -> act.create(Kinds.PHOTO, photo));
        return digest;
    }

    @Test
    void aColumnOfFileNamesGivesPhotographsToTheirPieces() throws IOException {
        Digest front = photograph("IMG_0001.JPG", "one");
        Digest back = photograph("IMG_0002.JPG", "two");
        Digest detail = photograph("detail; close.jpg", "three");
        photograph("twice.jpg", "four");
        photograph("twice.jpg", "five");
        written(SheetKind.PIECES, "a", "number,title\nV1,Tide\nV2,Reeds\n");
        String sheet = "No;Files;Shows\nV1;\"img_0001.jpg; Pictures/IMG_0002.jpg\";\nV2;\"detail; close.jpg\";detail\n"
                + "V1;IMG_0001.jpg;front\nV2;none.jpg;\nV2;twice.jpg;\nV9;IMG_0001.jpg;\nV2;;\n";
        List<String> verdicts = judged(SheetKind.PHOTOGRAPHS, file(sheet), true);
        assertThat(verdicts.subList(0, 3)).containsExactly("2 updated V1", "3 updated V2", "4 updated V1");
        assertThat(verdicts.get(3)).contains("5 refused V2: No photograph of the archive came in as “none.jpg”");
        assertThat(verdicts.get(4)).contains("2 different photographs came in as “twice.jpg”");
        assertThat(verdicts.get(5)).contains("There is no piece “V9”");
        assertThat(verdicts.get(6)).contains("its cell is empty");
        assertThat(written(SheetKind.PHOTOGRAPHS, "b", sheet).of(Verdict.UPDATED))
                .isEqualTo(3);
        assertThat(piece("V1").photos()).extracting(PiecePhoto::photo).containsExactly(front, back);
        assertThat(piece("V1").photos().get(0).role()).isEqualTo(PhotoRole.FRONT);
        assertThat(piece("V2").photos()).containsExactly(new PiecePhoto(detail, PhotoRole.DETAIL, "", 1, List.of()));
        assertThat(judged(SheetKind.PHOTOGRAPHS, file(sheet), true).subList(0, 3))
                .containsExactly("2 unchanged V1", "3 unchanged V2", "4 unchanged V1");
        String other = "No,File,Shows\nV1,IMG_0001.jpg,back\n";
        assertThat(judged(SheetKind.PHOTOGRAPHS, file(other), false)).containsExactly("2 left V1");
    }
}
