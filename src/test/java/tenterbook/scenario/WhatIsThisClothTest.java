package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.measure.Digest;

/** Asking which piece a photograph shows, by page and over HTTP, of the sample's rendered photographs. */
class WhatIsThisClothTest {
    private static final Pattern RUN = Pattern.compile("/recognition/[0-9a-f]{24}");

    private static Client client() {
        return new Client(SampleStudio.readOnly().wiring().port());
    }

    private static Answer sent(String path, byte[] picture) throws IOException {
        return client().postFiles(path, List.of(new Client.Part("files", "mine.jpg", picture)));
    }

    private static Digest front(String number) {
        return SampleStudio.readOnly()
                .wiring()
                .archive()
                .piece(number)
                .orElseThrow()
                .photos()
                .get(0)
                .photo();
    }

    /** The middle of a photograph of the archive, as its mirror image and on its side. */
    private static byte[] mirroredPart(Digest photo) throws IOException {
        BufferedImage whole = ImageIO.read(new ByteArrayInputStream(
                client().get("/photos/" + photo + "/original").body()));
        int width = whole.getWidth();
        int height = whole.getHeight();
        BufferedImage laid = new BufferedImage(height * 3 / 5, width * 3 / 5, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < laid.getHeight(); y++) {
            for (int x = 0; x < laid.getWidth(); x++) {
                // (x, y) to (y, x): a quarter turn and a mirror in one.
                laid.setRGB(x, y, whole.getRGB(width / 5 + y, height / 5 + x));
            }
        }
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        ImageIO.write(laid, "jpg", jpeg);
        return jpeg.toByteArray();
    }

    /** Until all photographs of the archive were looked at. */
    private static JsonNode answered(byte[] picture) throws Exception {
        for (int i = 0; i < 600; i++) {
            JsonNode answer = sent("/api/recognition", picture).json();
            if (answer.get("waiting").intValue() == 0) {
                return answer;
            }
            Thread.sleep(200);
        }
        throw new AssertionError("The photographs were not looked at within two minutes");
    }

    private static String over(String address) throws Exception {
        for (int i = 0; i < 300; i++) {
            String page = client().get(address).text();
            if (!page.contains("<progress")) {
                return page;
            }
            Thread.sleep(100);
        }
        throw new AssertionError("The comparison was not done within half a minute");
    }

    private static String run(String page) {
        Matcher run = RUN.matcher(page);
        assertThat(run.find()).as(page).isTrue();
        return run.group();
    }

    @Test
    void aMirroredPartIsPutToItsPieceWithTheEvidenceForIt() throws Exception {
        byte[] picture = mirroredPart(front("V24-003"));
        JsonNode answer = answered(picture);
        assertThat(answer.get("level").textValue()).isEqualTo("this-piece");
        JsonNode first = answer.at("/pieces/0");
        assertThat(first.get("number").textValue()).isEqualTo("V24-003");
        assertThat(first.get("mirrored").booleanValue()).isTrue();
        assertThat(first.at("/boards/0/board").textValue()).isEqualTo("B01");
        assertThat(first.get("timesStrangers").doubleValue()).isGreaterThan(3);

        String page = over(run(sent("/by-picture", picture).text()));
        assertThat(page)
                .contains("As far as likeness shows, this is the cloth of V24-003")
                .contains("Likeness is no proof")
                .contains("mirrored")
                .doesNotContain("authentic");
        Matcher laid = Pattern.compile("/recognition/[0-9a-f]{24}/over/[0-9a-f]{64}\\.jpg")
                .matcher(page);
        assertThat(laid.find()).isTrue();
        BufferedImage overlay =
                ImageIO.read(new ByteArrayInputStream(client().get(laid.group()).body()));
        assertThat(overlay.getRGB(overlay.getWidth() / 2, overlay.getHeight() / 2))
                .as("the middle is covered by the picture sent")
                .isNotEqualTo(0xffd9cfbd);
    }

    @Test
    void aPictureOfNothingInTheArchiveIsUnknown() throws Exception {
        JsonNode first = sent("/api/recognition", Pictures.largePng(400, 300)).json();
        assertThat(first.get("sentence").textValue())
                .as("what was not looked at is not denied")
                .startsWith(first.get("waiting").intValue() == 0 ? "Unknown: no photograph in" : "Unknown so far");
        JsonNode answer = answered(Pictures.largePng(400, 300));
        assertThat(answer.get("level").textValue()).isEqualTo("unknown");
        assertThat(answer.get("pieces")).isEmpty();
        assertThat(over(run(sent("/by-picture", Pictures.largePng(400, 300)).text())))
                .contains("Unknown: no photograph in the archive is like enough")
                .contains("No photograph has enough drawing in common with it to be compared closely.")
                .doesNotContain("0 photographs were");
    }

    @Test
    void theVerySamePhotographIsNoThousandthPartOff() throws Exception {
        byte[] picture =
                client().get("/photos/" + front("V24-003") + "/original").body();
        answered(picture);
        assertThat(over(run(sent("/by-picture", picture).text())))
                .containsPattern("That is [0-9,]+ times as many")
                .containsPattern("under 0.1 (pixels|mm)")
                .doesNotContain(" 0.0 ");
    }

    @Test
    void theFormSaysThatTheClothIsLookedForToo() throws IOException {
        assertThat(client().get("/by-picture").words())
                .contains("Find its cloth and its colours")
                .contains("to say which cloth it is");
    }

    @Test
    void aPhotographOfTheArchiveIsComparedWithTheOthersOnly() throws Exception {
        Digest front = front("V24-003");
        answered(mirroredPart(front));
        JsonNode answer = client().get("/api/recognition/photos/" + front).json();
        assertThat(answer.findValuesAsText("photo")).doesNotContain(front.hex());
        assertThat(answer.get("level").textValue()).isNotEqualTo("unknown");
        Answer asked = client().post("/photos/" + front + "/recognition");
        assertThat(asked.status()).isEqualTo(303);
        assertThat(over(asked.header("Location"))).contains("V24-003");
        assertThat(client().get("/photos/" + front + "/likely-piece").status()).isEqualTo(200);
        assertThat(client().get("/api/recognition/photos/" + "0".repeat(64)).status())
                .isEqualTo(404);
        assertThat(client().get("/recognition/" + "0".repeat(24)).status()).isEqualTo(404);
    }

    @Test
    void whatIsNoPictureIsRefusedWithASentence() throws IOException {
        Answer refused = sent("/api/recognition", "no picture".getBytes(StandardCharsets.US_ASCII));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.json().get("error").textValue()).contains("expected a whole JPEG");
    }

    @Test
    void aStoppedComparisonLeadsOn() throws Exception {
        String run = run(sent("/by-picture", Pictures.largePng(400, 300)).text());
        client().post(run + "/stop");
        String page = over(run);
        if (page.contains("Stopped")) {
            assertThat(page).contains("href=\"/by-picture\"");
        } else {
            assertThat(page).as("it was done before it could be stopped").contains("Unknown");
        }
    }

    /** A photograph that has just come in is looked at a little later, and its row in the list must not stay empty for good. */
    @Test
    void aPhotographNotLookedAtYetIsAskedAboutAgainAndAPieceWithdrawnIsSaidToBe(@TempDir Path folder) throws Exception {
        Digest photo = SampleStudio.readOnly()
                .wiring()
                .archive()
                .piece("V24-023")
                .orElseThrow()
                .photos()
                .get(0)
                .photo();
        try (SampleStudio studio = SampleStudio.openUnseen(folder, photo, Clock.systemUTC())) {
            Client fresh = new Client(studio.wiring().port());
            String asked = "/photos/" + photo + "/likely-piece?row=2";
            String soon = fresh.get(asked).text();
            assertThat(soon)
                    .contains("hx-get=\"/photos/" + photo + "/likely-piece?row=2&amp;again=1\"")
                    .contains("load delay:");
            assertThat(fresh.get(asked + "&again=40").text()).as("not for ever").doesNotContain("hx-get");

            byte[] picture = fresh.get("/photos/" + photo + "/original").body();
            String address = run(fresh.postFiles("/by-picture", List.of(new Client.Part("files", "mine.jpg", picture)))
                    .text());
            String page = fresh.get(address).text();
            for (int i = 0; i < 600 && !page.contains("this is the cloth of V24-023"); i++) {
                if (!page.contains("<progress")) {
                    address = run(fresh.postFiles("/by-picture", List.of(new Client.Part("files", "mine.jpg", picture)))
                            .text());
                }
                Thread.sleep(300);
                page = fresh.get(address).text();
            }
            assertThat(fresh.post("/pieces/V24-023/withdraw").status()).isEqualTo(303);
            assertThat(fresh.get(address).text())
                    .contains("V24-023, withdrawn since")
                    .contains("href=\"/history/piece/V24-023\"");
        }
    }
}
