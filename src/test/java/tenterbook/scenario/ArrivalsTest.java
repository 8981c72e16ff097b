package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.measure.Digest;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;

/** Many photographs at once, over HTTP and in a browser: taken in as work, waiting, and given to pieces by the maker alone. */
class ArrivalsTest extends Scenario {
    private Path photographs;

    @BeforeEach
    void folder() throws IOException {
        studio();
        photographs = Files.createDirectories(around.resolve("from the camera"));
        saved("/pieces", "number", "V24-001", "title", "Figueira");
        saved("/pieces", "number", "V24-002", "title", "Garça");
    }

    private Path put(String name, byte[] bytes) throws IOException {
        return Files.write(photographs.resolve(name), bytes);
    }

    private String taken() throws IOException {
        return over(saved("/photos/folder/path", "path", photographs.toString()));
    }

    private Piece piece(String number) {
        return wiring.archive().piece(number).orElseThrow();
    }

    private int photos() {
        return wiring.archive().ledger().count(Kinds.PHOTO);
    }

    @Test
    void aFolderIsTakenInAndItsNumbersAreProposedAndNotApplied() throws IOException {
        put("V24-001 front.jpg", Pictures.jpeg(1));
        put("v24_002-2.jpg", Pictures.jpeg(2));
        put("V24-0013.jpg", Pictures.jpeg(3));
        put("IMG_0007.jpg", Pictures.jpeg(4));
        put(".hidden.jpg", Pictures.jpeg(5));
        Answer begun = client.post("/photos/folder/path", "path", photographs.toString());
        assertThat(begun.location()).startsWith("/work/");
        assertThat(over(begun.location()))
                .contains("4 new photographs were added.")
                .contains("Go on");

        Answer waiting = client.get("/photos/waiting");
        assertThat(waiting.words())
                .contains("4 photographs", "give it to V24-001", "give it to V24-002", "Not known when")
                .doesNotContain("V24-0013, the number");
        assertThat(waiting.text()).doesNotContain("checked");
        assertThat(piece("V24-001").photos()).isEmpty();
        assertThat(Files.list(photographs)).as("the folder stays as it was").hasSize(5);
    }

    @Test
    void theMakerGivesPhotographsToPieces() throws IOException {
        byte[] one = Pictures.jpeg(1);
        byte[] two = Pictures.jpeg(2);
        byte[] three = Pictures.jpeg(3);
        put("V24-001.jpg", one);
        put("b.jpg", two);
        put("c.jpg", three);
        taken();
        saved(
                "/photos/waiting",
                "photos.0.digest",
                Digest.of(one).hex(),
                "photos.0.proposed",
                "V24-001",
                "photos.0.role",
                "front",
                "photos.1.digest",
                Digest.of(two).hex(),
                "photos.1.number",
                "V24-001",
                "photos.1.role",
                "detail",
                "photos.2.digest",
                Digest.of(three).hex(),
                "photos.2.role",
                "other");
        assertThat(piece("V24-001").photos())
                .extracting(photo -> photo.role())
                .containsExactly(PhotoRole.FRONT, PhotoRole.DETAIL);
        assertThat(client.get("/photos/waiting").words())
                .contains("One photograph", "c.jpg")
                .doesNotContain("b.jpg");
        assertThat(client.get("/history/piece/V24-001").words()).contains("Photographs given to it");
    }

    @Test
    void aNumberInAnyWritingIsThePieceThatHasItAndItsFirstPhotographIsItsFront() throws IOException {
        byte[] one = Pictures.jpeg(1);
        byte[] two = Pictures.jpeg(2);
        byte[] three = Pictures.jpeg(3);
        put("a.jpg", one);
        put("b.jpg", two);
        put("c.jpg", three);
        taken();
        assertThat(client.get("/photos/waiting").text())
                .contains("as usual: the front first")
                .doesNotContain("value=\"other\" selected");
        saved(
                "/photos/waiting",
                "photos.0.digest",
                Digest.of(one).hex(),
                "photos.0.number",
                "v24-002",
                "photos.0.role",
                "",
                "photos.1.digest",
                Digest.of(two).hex(),
                "photos.1.number",
                "V24 2");
        assertThat(piece("V24-002").photos())
                .extracting(photo -> photo.role())
                .containsExactly(PhotoRole.FRONT, PhotoRole.DETAIL);
        saved("/pieces", "number", "V24-2", "title", "Another");
        Answer unclear = client.post(
                "/photos/waiting", "photos.0.digest", Digest.of(three).hex(), "photos.0.number", "v24/2");
        assertThat(unclear.status()).as("two pieces have it").isEqualTo(422);
    }

    @Test
    void onePieceIsTypedForAllThatWereTakenTogether() throws IOException {
        byte[] one = Pictures.jpeg(1);
        byte[] two = Pictures.jpeg(2);
        byte[] three = Pictures.jpeg(3);
        put("a.jpg", one);
        put("b.jpg", two);
        put("c.jpg", three);
        taken();
        String[] form = {
            "groups.0.number", "V24-001", "photos.0.group", "0", "photos.0.digest",
                    Digest.of(one).hex(),
            "photos.1.group", "0", "photos.1.digest", Digest.of(two).hex(), "photos.1.number", "V24-002",
            "photos.2.group", "0", "photos.2.digest", Digest.of(three).hex(), "photos.2.aside", "1"
        };
        saved("/photos/waiting", form);
        assertThat(piece("V24-001").photos()).hasSize(1);
        assertThat(piece("V24-002").photos()).hasSize(1);
        assertThat(client.get("/photos/waiting").words()).contains("No photograph waits");
    }

    @Test
    void oneLineInDoubtGivesNothingAndKeepsWhatWasChosen() throws IOException {
        byte[] one = Pictures.jpeg(1);
        byte[] two = Pictures.jpeg(2);
        put("a.jpg", one);
        put("V24-001.jpg", two);
        taken();
        Answer answer = client.post(
                "/photos/waiting",
                "photos.0.digest",
                Digest.of(one).hex(),
                "photos.0.number",
                "V24-077",
                "photos.0.role",
                "detail",
                "photos.1.digest",
                Digest.of(two).hex(),
                "photos.1.proposed",
                "V24-001");
        assertThat(answer.status()).isEqualTo(422);
        assertThat(answer.words()).contains("There is no piece “V24-077”", "Nothing was given yet");
        assertThat(answer.text()).contains("value=\"V24-077\"").containsPattern("value=\"V24-001\" checked");
        assertThat(piece("V24-001").photos()).isEmpty();
    }

    @Test
    void aPieceOfTwoStatesIsNotGivenAPhotographOfAnUnknownOne() throws IOException {
        clamping();
        saved(
                "/pieces",
                "number",
                "V24-003",
                "title",
                "Twice",
                "made.0.clamping",
                "C24-001",
                "made.1.clamping",
                "C24-001");
        byte[] one = Pictures.jpeg(1);
        put("V24-003.jpg", one);
        taken();
        String digest = Digest.of(one).hex();
        Answer unsaid = client.post("/photos/waiting", "photos.0.digest", digest, "photos.0.proposed", "V24-003");
        assertThat(unsaid.status()).isEqualTo(422);
        assertThat(unsaid.words()).contains("V24-003 has 2 states; say which one it shows.");
        saved("/photos/waiting", "photos.0.digest", digest, "photos.0.number", "V24-003", "photos.0.state", "1");
        assertThat(piece("V24-003").photos().get(0).state()).isEqualTo(1);
    }

    @Test
    void badFilesAreToldOneByOneAndSpoilNothing() throws IOException {
        put("a.jpg", Pictures.jpeg(1));
        put("notes.txt", "dip four times".getBytes(StandardCharsets.UTF_8));
        put("empty.jpg", new byte[0]);
        byte[] whole = Pictures.jpeg(2);
        put("broken.jpg", java.util.Arrays.copyOf(whole, whole.length / 2));
        put("z.jpg", Pictures.jpeg(3));
        assertThat(taken())
                .contains("2 new photographs were added; 3 were not added.", "notes.txt:", "empty.jpg:", "broken.jpg:");
        assertThat(photos()).isEqualTo(2);
    }

    @Test
    void whatIsThereAlreadyIsToldWithThePieceThatShowsItAndKeptOnce() throws IOException {
        byte[] shown = Pictures.jpeg(1);
        String digest = client.postFiles("/photos", List.of(new Client.Part("files", "first.jpg", shown)))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        saved("/pieces", "number", "V24-005", "title", "x", "photos.0.photo", digest, "photos.0.state", "1");
        put("again.jpg", shown);
        put("x1.jpg", Pictures.jpeg(2));
        put("x2.jpg", Pictures.jpeg(2));
        assertThat(taken())
                .contains("1 new photograph was added; 2 were there already.")
                .contains("again.jpg: the archive has this picture already, as first.jpg, shown by V24-005.")
                .contains("the same picture as x");
        assertThat(photos()).isEqualTo(2);
        assertThat(taken()).contains("No new photographs were added; 3 were there already.");
        assertThat(client.get("/photos/waiting").words()).contains("One photograph");
    }

    @Test
    void aPathThatLeadsNowhereIsRefusedWithASentenceAndComesBack() throws IOException {
        Path file = put("a.jpg", Pictures.jpeg(1));
        Path empty = Files.createDirectories(around.resolve("empty"));
        for (String path : new String[] {
            "",
            "photographs",
            around.resolve("not there").toString(),
            file.toString(),
            empty.toString(),
            around + "/studio"
        }) {
            Answer answer = client.post("/photos/folder/path", "path", path);
            assertThat(answer.status()).as(path).isEqualTo(422);
            assertThat(answer.words()).as(path).contains("No photograph was added. Expected", "Nothing was changed.");
            assertThat(answer.field("path")).isEqualTo(path);
        }
        assertThat(client.post("/photos/folder/path", "path", around.toString(), "within", "1")
                        .words())
                .contains("a folder outside the archive");
        assertThat(photos()).isZero();
    }

    @Test
    void filesChosenInTheBrowserAreTakenInAndNothingIsLeftPutBy() throws IOException {
        String work = client.postFiles(
                        "/photos/folder/files",
                        List.of(
                                new Client.Part("files", "V24-001.jpg", Pictures.jpeg(1)),
                                new Client.Part("files", "bad.jpg", new byte[] {1, 2, 3}),
                                new Client.Part("files", "b.jpg", Pictures.jpeg(2))))
                .location();
        assertThat(over(work)).contains("2 new photographs were added; 1 was not added.", "bad.jpg:");
        try (Stream<Path> left = Files.list(wiring.archive().folder().photos().resolve("arriving"))) {
            assertThat(left).isEmpty();
        }
        assertThat(client.postFiles("/photos/folder/files", List.of()).status()).isEqualTo(422);
    }

    @Test
    void workThatIsStoppedKeepsWhatWasTakenAndLeavesTheRest() throws IOException {
        for (int i = 0; i < 60; i++) {
            put("p%02d.jpg".formatted(i), Pictures.jpeg(i));
        }
        String work = saved("/photos/folder/path", "path", photographs.toString());
        client.post(work + "/stop");
        String said = over(work);
        assertThat(said).containsPattern("left when you asked to stop|[Ss]topped");
        int kept = photos();
        assertThat(kept).isLessThan(60);
        assertThat(taken()).contains((60 - kept) + " new photograph");
        assertThat(photos()).isEqualTo(60);
    }

    @Test
    void whatBelongsToNoPieceIsSetAsideAndComesBackWhenItIsTakenInAgain() throws IOException {
        byte[] one = Pictures.jpeg(1);
        put("thumb.jpg", one);
        taken();
        saved("/photos/waiting", "photos.0.digest", Digest.of(one).hex(), "photos.0.aside", "1");
        assertThat(client.get("/photos/waiting").words()).contains("No photograph waits");
        assertThat(taken()).contains("1 new photograph was added.");
        assertThat(client.get("/photos/waiting").words()).contains("One photograph");
    }

    @Test
    void aPieceBegunFromAWaitingPhotographShowsIt() throws IOException {
        byte[] one = Pictures.jpeg(1);
        put("new.jpg", one);
        taken();
        assertThat(client.get("/pieces/new?photo=" + Digest.of(one).hex()).field("photos.0.photo"))
                .isEqualTo(Digest.of(one).hex());
    }

    @Test
    void aLinkToAFolderIsFollowedUnlessItLeadsIntoTheArchive() throws IOException {
        put("one.jpg", Pictures.jpeg(1));
        Path link = Files.createSymbolicLink(around.resolve("link"), photographs);
        assertThat(over(saved("/photos/folder/path", "path", link.toString()))).contains("1 new photograph was added.");
        Path studio = wiring.archive().folder().root();
        Path archive = Files.createSymbolicLink(around.resolve("archive link"), studio);
        for (Path own : List.of(archive, archive.resolve("photos"))) {
            Answer refused = client.post("/photos/folder/path", "path", own.toString(), "within", "1");
            assertThat(refused.status()).isEqualTo(422);
            assertThat(refused.words()).contains("a folder outside the archive");
        }
        assertThat(photos()).isEqualTo(1);
    }

    @Test
    void whatIsTypedForOthersStaysWhereOneWasGivenOrSetAsideInAnotherWindow() throws IOException {
        byte[][] bytes = {Pictures.jpeg(1), Pictures.jpeg(2), Pictures.jpeg(3)};
        for (int i = 0; i < bytes.length; i++) {
            put("IMG_000" + i + ".jpg", bytes[i]);
        }
        taken();
        String[] of = Stream.of(bytes).map(each -> Digest.of(each).hex()).toArray(String[]::new);
        saved("/photos/waiting", "photos.0.digest", of[0], "photos.0.aside", "1");
        saved("/photos/waiting", "photos.0.digest", of[1], "photos.0.number", "V24-001");
        for (String[] late : new String[][] {{of[0], "number", "V24-001"}, {of[1], "aside", "1"}}) {
            Answer answer = client.post(
                    "/photos/waiting",
                    "photos.0.digest",
                    late[0],
                    "photos.0." + late[1],
                    late[2],
                    "photos.1.digest",
                    of[2],
                    "photos.1.number",
                    "V24-002");
            assertThat(answer.status()).isEqualTo(409);
            assertThat(answer.words()).contains("Nothing was given yet").contains("V24-001");
            assertThat(answer.text()).contains("value=\"V24-002\"");
            assertThat(piece("V24-002").photos()).isEmpty();
        }
        Answer again = client.get(saved("/photos/waiting", "photos.0.digest", of[0], "photos.0.aside", "1"));
        assertThat(again.words()).doesNotContain("Set 1 aside");
    }

    @Test
    void inABrowserFilesAreChosenWatchedAndGivenToTheirPiece() throws IOException {
        Path one = put("V24-001 front.jpg", Pictures.jpeg(1));
        Path two = put("other.jpg", Pictures.jpeg(2));
        try (BrowserContext context = Chromium.browser().newContext()) {
            Page page = context.newPage();
            page.navigate(wiring.address() + "/pieces/new");
            page.click("text=Add photographs");
            page.setInputFiles("#files", new Path[] {one, two});
            page.click("text=Add the files");
            page.waitForSelector("text=2 new photographs were added.");
            page.click("text=Go on");
            page.waitForSelector("h1:has-text('Waiting for a piece')");
            assertThat(page.locator("input[type=checkbox]:checked").count()).isZero();
            page.check("text=give it to V24-001");
            page.click("text=Give the chosen ones to their pieces");
            page.waitForSelector("text=Gave 1 photograph to V24-001.");
        }
        assertThat(piece("V24-001").photos()).hasSize(1);
        assertThat(piece("V24-002").photos()).isEmpty();
    }
}
