package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.awt.Color;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.imaging.cloth.ClothOutline;
import tenterbook.measure.Digest;

/** Searching by the colours of a picture that is not kept. */
class PictureSearchTest {
    private static Client client() {
        return new Client(SampleStudio.readOnly().wiring().port());
    }

    private static Answer sent(String path, byte[] picture) throws IOException {
        return client().postFiles(path, List.of(new Client.Part("files", "mine.jpg", picture)));
    }

    private static byte[] original(String number) throws IOException {
        var wiring = SampleStudio.readOnly().wiring();
        Digest digest =
                wiring.archive().piece(number).orElseThrow().photos().get(0).photo();
        return client().get("/photos/" + digest + "/original").body();
    }

    private static List<Path> kept() {
        Path root = SampleStudio.readOnly().wiring().archive().folder().root();
        try (Stream<Path> files = Files.walk(root.resolve("photos"))) {
            return files.filter(Files::isRegularFile).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void aPhotographWithACardIsCalibratedByItAndFindsItsOwnPieceFirst() throws IOException {
        byte[] picture = original("V24-003");
        List<Path> before = kept();
        JsonNode seen = sent("/api/colour/picture", picture).json();
        assertThat(seen.get("edge").textValue()).isEqualTo("found");
        assertThat(seen.get("of").textValue()).isEqualTo("cloth");
        assertThat(seen.get("calibrated").booleanValue()).isTrue();
        assertThat(seen.get("within").doubleValue()).isEqualTo(10);
        assertThat(seen.get("likelyError").doubleValue()).isBetween(8.3, 9.5);

        PhotoCalibration marked = SampleStudio.readOnly()
                .wiring()
                .archive()
                .ledger()
                .find(Kinds.CALIBRATION, Digest.of(picture).hex())
                .orElseThrow()
                .record();
        assertThat(seen.at("/card/0/x").doubleValue())
                .as("the same card that the maker marked")
                .isEqualTo(marked.cards().get(0).corners().get(0).x(), org.assertj.core.api.Assertions.within(0.02));

        JsonNode found = client().get(seen.at("/colours/0/search").textValue()).json();
        assertThat(found.get("pieces").findValuesAsText("number")).contains("V24-003");
        assertThat(kept()).as("originals in the archive").isEqualTo(before);

        Answer page = sent("/by-picture", picture);
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words())
                .contains("taken for 18")
                .contains("was not kept")
                .contains("V24-003");
        assertThat(page.text()).contains("data:image/jpeg;base64,").contains("cloth-edge");
    }

    @Test
    void withoutACardTheToleranceIsWiderAndTheAnswerSaysSo() throws IOException {
        byte[] picture = Pictures.hung(new Color(0xe0d6c6), new Color(0x345a94));
        JsonNode seen = sent("/api/colour/picture", picture).json();
        assertThat(seen.get("calibrated").booleanValue()).isFalse();
        assertThat(seen.get("within").doubleValue()).isEqualTo(15);
        assertThat(seen.has("likelyError")).isFalse();
        assertThat(seen.get("colours")).hasSize(1);
        assertThat(seen.at("/colours/0/search").textValue()).contains("within=15");
        assertThat(sent("/by-picture", picture).words())
                .contains("No grey card")
                .contains("15 instead of 10");
    }

    @Test
    void whereNoClothIsToldApartTheColoursAreThoseOfThePictureAndNothingIsSearchedYet() throws IOException {
        var archive = SampleStudio.readOnly().wiring().archive();
        Digest board = archive.ledger().all(Kinds.PHOTO).stream()
                .map(saved -> saved.record())
                .filter(photo -> archive.cloths().of(photo).outline().edge() == ClothOutline.Edge.RAGGED)
                .findFirst()
                .orElseThrow()
                .digest();
        byte[] picture = client().get("/photos/" + board + "/original").body();
        JsonNode seen = sent("/api/colour/picture", picture).json();
        assertThat(seen.get("edge").textValue()).isEqualTo("ragged");
        assertThat(seen.get("of").textValue()).isEqualTo("photograph");
        assertThat(seen.get("outline")).isEmpty();
        assertThat(seen.at("/colours/0/search").textValue()).contains("in=photograph");
        Answer page = sent("/by-picture", picture);
        assertThat(page.words()).contains("the whole picture");
        assertThat(page.text()).doesNotContain("id=\"results\"");
    }

    @Test
    void whatIsNoPictureIsRefusedWithASentence() throws IOException {
        byte[] text = "no picture".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        Answer page = sent("/by-picture", text);
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words()).contains("expected a whole JPEG");
        assertThat(page.text()).contains("picture-problem");
        assertThat(sent("/api/colour/picture", text).status()).isEqualTo(422);
        assertThat(client().post("/by-picture").status()).isEqualTo(422);
        assertThat(client().get("/by-picture").status()).isEqualTo(200);
        Answer huge = sent("/api/colour/picture", claiming(Pictures.largePng(40, 20), 20_000, 13_000));
        assertThat(huge.status()).isEqualTo(422);
        assertThat(huge.json().get("error").textValue()).contains("250 million pixels");
    }

    /** The same PNG with another size in its heading (ISO/IEC 15948, IHDR: sizes at byte 16, checksum at byte 29). */
    private static byte[] claiming(byte[] png, int width, int height) {
        ByteBuffer bytes = ByteBuffer.wrap(png.clone()).putInt(16, width).putInt(20, height);
        CRC32 sum = new CRC32();
        sum.update(bytes.array(), 12, 17);
        return bytes.putInt(29, (int) sum.getValue()).array();
    }
}
