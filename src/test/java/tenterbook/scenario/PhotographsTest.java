package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.measure.Digest;

/** Photographs: taken in, refused, shown and given back. */
class PhotographsTest extends Scenario {
    private Answer upload(Client.Part... files) throws IOException {
        return client.postFiles("/photos", List.of(files));
    }

    private static Client.Part file(String name, byte[] bytes) {
        return new Client.Part("files", name, bytes);
    }

    /** A JPEG with bytes after its end, as some cameras write, to the length wanted. */
    private static byte[] jpegOf(int length) throws IOException {
        return Arrays.copyOf(Pictures.jpeg(9), length);
    }

    @Test
    void aPhotographIsKeptAsItCameAndShownInEverySize() throws IOException {
        byte[] jpeg = Pictures.jpeg(1);
        Answer answer = upload(file("DSC_0001.JPG", jpeg));
        assertThat(answer.status()).isEqualTo(200);
        JsonNode taken = answer.json().get(0);
        String digest = Digest.of(jpeg).hex();
        assertThat(taken.get("digest").textValue()).isEqualTo(digest);
        assertThat(taken.get("name").textValue()).isEqualTo("DSC_0001.JPG");
        for (String size : List.of("small", "medium", "large")) {
            Answer preview = client.get("/photos/" + digest + "/" + size);
            assertThat(preview.status()).isEqualTo(200);
            assertThat(preview.header("Content-Type")).isEqualTo("image/jpeg");
            assertThat(preview.header("Cache-Control")).contains("immutable").contains("private");
            assertThat(ImageIO.read(new ByteArrayInputStream(preview.body()))).isNotNull();
        }
        Answer original = client.get("/photos/" + digest + "/original");
        assertThat(original.body()).isEqualTo(jpeg);
        assertThat(original.header("Content-Disposition")).startsWith("attachment");
        assertThat(original.header("Content-Type")).isEqualTo("image/jpeg");
    }

    @Test
    void aTurnedPhotographIsShownUpright() throws IOException {
        byte[] turned = Pictures.turned(Pictures.jpeg(2), 6);
        String digest =
                upload(file("turned.jpg", turned)).json().get(0).get("digest").textValue();
        BufferedImage shown = ImageIO.read(new ByteArrayInputStream(
                client.get("/photos/" + digest + "/medium").body()));
        // JEITA CP-3451: 6 means the stored picture must be turned by 90° clockwise; its right half comes to the
        // bottom.
        assertThat(shown.getHeight()).isGreaterThan(shown.getWidth());
        int top = shown.getRGB(shown.getWidth() / 2, shown.getHeight() / 4) & 0xff;
        int bottom = shown.getRGB(shown.getWidth() / 2, shown.getHeight() * 3 / 4) & 0xff;
        assertThat(bottom).isGreaterThan(top + 50);
    }

    @Test
    void theSamePhotographTwiceIsRecognised() throws IOException {
        byte[] jpeg = Pictures.jpeg(1);
        String digest = upload(file("a.jpg", jpeg)).json().get(0).get("digest").textValue();
        saved(
                "/pieces",
                "number",
                "V24-001",
                "photos.0.photo",
                digest,
                "photos.0.role",
                "front",
                "photos.0.state",
                "1");
        JsonNode again = upload(file("b.jpg", jpeg)).json().get(0);
        assertThat(again.get("digest").textValue()).isEqualTo(digest);
        assertThat(again.get("shownBy").get(0).textValue()).isEqualTo("V24-001");
        assertThat(wiring.archive().ledger().count(Kinds.PHOTO)).isEqualTo(1);
        assertThat(originals()).hasSize(1);
    }

    private List<Path> originals() throws IOException {
        try (Stream<Path> files = Files.walk(wiring.archive().folder().photos())) {
            return files.filter(Files::isRegularFile).toList();
        }
    }

    @Test
    void whatIsNoPictureIsRefusedWithASentence() throws IOException {
        byte[] jpeg = Pictures.jpeg(1);
        for (byte[] bytes : List.of(
                "just words".getBytes(StandardCharsets.US_ASCII),
                Arrays.copyOf(jpeg, jpeg.length / 2),
                "<svg xmlns='http://www.w3.org/2000/svg'/>".getBytes(StandardCharsets.US_ASCII))) {
            Answer answer = upload(file("figs.jpg", bytes));
            assertThat(answer.status()).isEqualTo(422);
            assertThat(answer.json().get(0).get("problem").textValue())
                    .contains("JPEG")
                    .endsWith(".");
        }
        Answer none = client.postFiles("/photos", List.of());
        assertThat(none.status()).isEqualTo(400);
        assertThat(none.json().get("error").textValue()).contains("No photograph arrived");
        assertThat(client.send("POST", "/photos", jpeg, "Content-Type", "image/jpeg")
                        .status())
                .isEqualTo(400);
        assertThat(wiring.archive().ledger().lastSequence()).isZero();
        assertThat(originals()).isEmpty();
    }

    @Test
    void amongManyOneBadFileSpoilsNothing() throws IOException {
        Answer answer = upload(
                file("a.jpg", Pictures.jpeg(1)),
                file("b.jpg", "no picture".getBytes(StandardCharsets.US_ASCII)),
                file("c.jpg", Pictures.jpeg(2)),
                file("d.jpg", jpegOf((50 << 20) + 1)));
        assertThat(answer.status()).isEqualTo(200);
        assertThat(answer.json()).hasSize(4);
        assertThat(answer.json().get(1).has("problem")).isTrue();
        assertThat(answer.json().get(3).get("problem").textValue()).contains("50 MB");
        assertThat(wiring.archive().ledger().count(Kinds.PHOTO)).isEqualTo(2);
    }

    @Test
    void aPhotographOverTheLimitIsRefusedAndTheServerGoesOn() throws IOException {
        Answer answer = upload(file("huge.jpg", jpegOf(51 << 20)));
        assertThat(answer.status()).isEqualTo(413);
        assertThat(answer.text()).contains("50 MB");
        assertThat(originals()).isEmpty();

        Answer form = client.postFiles(
                "/pieces", List.of(file("huge.jpg", jpegOf(51 << 20))), "number", "V24-001", "title", "Maré");
        assertThat(form.status()).as("a form keeps what was typed").isEqualTo(422);
        assertThat(form.field("title")).isEqualTo("Maré");
        assertThat(form.words()).contains("50 MB");

        assertThat(upload(file("fine.jpg", Pictures.jpeg(1))).status()).isEqualTo(200);
    }

    @Test
    void manyLargePhotographsAtOnceTakeTurnsInALittleMemory() throws Exception {
        byte[] large = Pictures.largePng(5000, 4000);
        try (ServedChild child = ServedChild.start(around.resolve("small"), 0)) {
            Client other = child.client();
            ExecutorService browsers = Executors.newFixedThreadPool(6);
            List<Future<Answer>> answers = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                answers.add(browsers.submit(
                        () -> other.postFiles("/photos", List.of(new Client.Part("files", "a.png", large)))));
            }
            for (Future<Answer> answer : answers) {
                assertThat(answer.get().status()).as(answer.get().text()).isEqualTo(200);
            }
            browsers.shutdown();
        }
    }

    @Test
    void aPhotographThatExhaustsTheMemoryIsToldSoAndTheServerGoesOn() throws Exception {
        try (ServedChild child = ServedChild.start(around.resolve("small"), 0)) {
            Client other = child.client();
            byte[] bomb = Pictures.pngWithCommentOf(400_000_000);
            Answer answer = other.postFiles("/photos", List.of(new Client.Part("files", "a.png", bomb)));
            assertThat(answer.status()).isEqualTo(500);
            assertThat(answer.text()).contains("not enough memory").contains("safe");
            assertThat(other.postFiles("/photos", List.of(new Client.Part("files", "a.jpg", Pictures.jpeg(1))))
                            .status())
                    .isEqualTo(200);
        }
    }

    @Test
    void aPhotographThatIsNotHereIsNotFound() throws IOException {
        String none = "0".repeat(64);
        for (String path : List.of(
                "/photos/" + none + "/small",
                "/photos/" + none + "/original",
                "/photos/short/small",
                "/photos/" + none.toUpperCase(java.util.Locale.ROOT) + "x/small",
                "/photos/" + Digest.of(Pictures.jpeg(1)).hex() + "/enormous")) {
            assertThat(client.get(path).status()).as(path).isEqualTo(404);
        }
    }

    @Test
    void previewsThatWereDeletedAreMadeAgain() throws IOException {
        String digest = upload(file("a.jpg", Pictures.jpeg(1)))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        try (Stream<Path> files = Files.walk(wiring.archive().folder().previews())) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.delete(file);
            }
        }
        assertThat(client.get("/photos/" + digest + "/small").status()).isEqualTo(200);
    }

    @Test
    void aColourIsMeasuredOnAMarkedPartNamedAndTakenAway() throws IOException {
        String digest = upload(file("a.jpg", Pictures.jpeg(1)))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        saved(
                "/pieces",
                "number",
                "V24-001",
                "photos.0.photo",
                digest,
                "photos.0.role",
                "front",
                "photos.0.state",
                "1");
        String at = "/pieces/V24-001/photos/" + digest;
        saved(
                at + "/colours",
                "role",
                "ground",
                "name",
                "mar",
                "left",
                "5",
                "top",
                "20",
                "right",
                "45",
                "bottom",
                "90");
        var region = wiring.archive()
                .piece("V24-001")
                .orElseThrow()
                .photos()
                .get(0)
                .regions()
                .get(0);
        var expected = tenterbook.colour.space.Srgb.parse("2f4a6d").lab();
        assertThat(tenterbook.colour.space.Ciede2000.difference(region.colour(), expected))
                .isLessThan(1.5);
        assertThat(client.get(at).words()).contains("mar");

        for (String[] wrong : List.of(
                new String[] {"left", "a", "top", "0", "right", "50", "bottom", "50", "role", "ground"},
                new String[] {"left", "0", "top", "0", "right", "0", "bottom", "0", "role", "ground"},
                new String[] {"left", "NaN", "top", "0", "right", "50", "bottom", "50", "role", "ground"},
                new String[] {"left", "0", "top", "0", "right", "900", "bottom", "50", "role", "ground"},
                new String[] {"colour", "blue", "role", "ground"},
                new String[] {"colour", "50,0,0", "share", "most", "role", "ground"},
                new String[] {"colour", "50,0,0", "share", "7", "role", "ground"},
                new String[] {"colour", "50,0,0"},
                new String[] {"colour", "50,0,0", "role", "sky"})) {
            Answer answer = client.post(at + "/colours", wrong);
            // A field that was typed is told in its place; what the page itself sends is refused.
            assertThat(answer.status()).as(String.join(" ", wrong)).isEqualTo(wrong[0].equals("left") ? 422 : 400);
            assertThat(answer.words()).as(String.join(" ", wrong)).doesNotContain("For input string");
        }
        assertThat(client.post(at + "/colours/forget", "index", "x").status()).isEqualTo(303);
        saved(at + "/colours/forget", "index", "0");
        assertThat(wiring.archive()
                        .piece("V24-001")
                        .orElseThrow()
                        .photos()
                        .get(0)
                        .regions())
                .isEmpty();
    }

    @Test
    void changingAPieceKeepsTheColoursNamedOnItsPhotographs() throws IOException {
        String digest = upload(file("a.jpg", Pictures.jpeg(1)))
                .json()
                .get(0)
                .get("digest")
                .textValue();
        saved(
                "/pieces",
                "number",
                "V24-001",
                "photos.0.photo",
                digest,
                "photos.0.role",
                "front",
                "photos.0.state",
                "1");
        saved("/pieces/V24-001/photos/" + digest + "/colours", "role", "ground", "colour", "30,-1,-22", "share", "0.5");
        Answer form = client.get("/pieces/V24-001/edit");
        saved(
                "/pieces/V24-001/edit",
                "version",
                form.field("version"),
                "title",
                "Maré",
                "photos.0.photo",
                digest,
                "photos.0.role",
                "detail",
                "photos.0.state",
                "1");
        var photo = wiring.archive().piece("V24-001").orElseThrow().photos().get(0);
        assertThat(photo.role().toString()).isEqualTo("detail");
        assertThat(photo.regions()).hasSize(1);
    }
}
