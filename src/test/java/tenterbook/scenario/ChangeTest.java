package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.Srgb;
import tenterbook.colour.target.Calibration;
import tenterbook.colour.target.CardOutline;
import tenterbook.colour.target.Correction;
import tenterbook.colour.target.KnownCard;
import tenterbook.colour.target.StatedError;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.measure.Digest;

/** Whether a piece has changed, told from two of its photographs over HTTP. */
class ChangeTest extends Scenario {
    private static final Color BLUE = new Color(0x2f4a6d);
    private static final Color FADED = new Color(0x546c8c);

    private String early;
    private String faded;
    private String moved;
    private String other;

    @BeforeEach
    void hang() throws IOException {
        studio();
        early = taken("early.png", Pictures.cloth(5, BLUE, 0, 0));
        faded = taken("faded.png", Pictures.cloth(5, FADED, 6, -4));
        moved = taken("moved.png", Pictures.cloth(5, BLUE, -9, 7));
        other = taken("other.png", Pictures.cloth(99, BLUE, 0, 0));
        String[] photos = {early, faded, moved, other};
        String[] captions = {"in spring", "in autumn", "in spring, from the left", "another cloth"};
        String[] form = new String[4 + 6 * photos.length];
        form[0] = "number";
        form[1] = "V24-001";
        form[2] = "title";
        form[3] = "Figueira";
        for (int i = 0; i < photos.length; i++) {
            form[4 + 6 * i] = "photos." + i + ".photo";
            form[5 + 6 * i] = photos[i];
            form[6 + 6 * i] = "photos." + i + ".state";
            form[7 + 6 * i] = "1";
            form[8 + 6 * i] = "photos." + i + ".caption";
            form[9 + 6 * i] = captions[i];
        }
        saved("/pieces", form);
        saved(
                "/pieces/V24-001/photos/" + early + "/colours",
                "left",
                "10",
                "top",
                "10",
                "right",
                "90",
                "bottom",
                "90",
                "role",
                "ground",
                "name",
                "woad");
    }

    private String taken(String name, byte[] picture) throws IOException {
        return client.postFiles("/photos", List.of(new Client.Part("files", name, picture)))
                .json()
                .get(0)
                .get("digest")
                .textValue();
    }

    private static String change(String before, String after) {
        return "/pieces/V24-001/change?before=" + before + "&after=" + after;
    }

    @Test
    void thePageOffersEveryPhotographAndComparesNothingUnasked() throws IOException {
        Answer page = client.get("/pieces/V24-001/change");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words())
                .contains("in spring", "in autumn", "another cloth")
                .doesNotContain("ΔE00");
        assertThat(client.get("/pieces/V24-001").text()).contains("/pieces/V24-001/change");
    }

    /** The whole of the named part becomes lighter by what the two grounds differ in, less where the blots are. */
    @Test
    void aFadedGroundIsToldWithItsIntervalAndTheWarningThatNoCardWasThere() throws IOException {
        Lab before = new Srgb(BLUE.getRed(), BLUE.getGreen(), BLUE.getBlue()).lab();
        Lab after = new Srgb(FADED.getRed(), FADED.getGreen(), FADED.getBlue()).lab();
        double grounds = Ciede2000.difference(before, after);
        String words = client.get(change(early, faded)).words();
        assertThat(words).contains("ground, woad", "not calibrated", "no grade by ISO 105", "95\u00a0% intervals");
        double told = Double.parseDouble(words.replaceAll("(?s).*?ΔE00 ([0-9.]+) \\(.*", "$1"));
        assertThat(told).isBetween(grounds * 0.5, grounds);
        double lighter = Double.parseDouble(words.replaceAll("(?s).*?ΔL\\* ([+-][0-9.]+).*", "$1"));
        assertThat(lighter).isBetween(3.0, after.lightness() - before.lightness());
    }

    @Test
    void thePageAnswersItsQuestionInOneSentenceFirst() throws IOException {
        assertThat(client.get("/pieces/V24-001").words())
                .contains("Compare photographs for fading")
                .doesNotContain("faded");
        String differs = client.get(change(early, faded)).words();
        assertThat(differs)
                .contains(
                        "Compare photographs for fading: V24-001 Figueira The photographs differ: ground, woad (paler")
                .contains("Whether the cloth or only the light has changed cannot be decided")
                .contains("differs: paler");
        assertThat(client.get(change(early, moved)).words())
                .contains("Compare photographs for fading: V24-001 Figueira No change can be seen in: ground, woad.")
                .doesNotContain("Yes, it has changed");
    }

    @Test
    void twoCalibratedPhotographsOfOneClothAreNotToBeToldApartAndThePageSaysUpToWhat() throws IOException {
        calibrated(early);
        calibrated(moved);
        String words = client.get(change(early, moved)).words();
        assertThat(words)
                .contains(
                        "Not to be told apart: ground, woad. Two calibrated photographs of an unchanged cloth differ as much.")
                .contains("not to be told apart: nine in ten colours of an unchanged cloth differ by up to ΔE00 10.0")
                .doesNotContain("not calibrated", "Yes, it has changed");
    }

    /** As if a grey card had shown that the light was as it should be. */
    private void calibrated(String photo) {
        Correction correction = new Correction(
                Calibration.GREY_CARD,
                Correction.NONE.matrix(),
                Correction.NONE.offset(),
                1,
                StatedError.of(Calibration.GREY_CARD).nineInTen(),
                StatedError.of(Calibration.GREY_CARD).half(),
                "");
        CardOutline card =
                new CardOutline(Region.rectangle(0.9, 0.9, 0.99, 0.99).corners());
        wiring.archive()
                .ledger()
                .write(
                        "Inês Valderim",
                        act -> act.create(
                                Kinds.CALIBRATION,
                                PhotoCalibration.of(
                                        new Digest(photo),
                                        correction,
                                        List.of(PhotoCalibration.MarkedCard.of(card, KnownCard.grey18())),
                                        Instant.parse("2024-06-01T10:00:00Z"),
                                        "Inês Valderim")));
    }

    @Test
    void aCameraThatMerelyStoodElsewhereIsNoChange() throws IOException {
        assertThat(client.get(change(early, moved)).words()).contains("no change can be seen");
    }

    @Test
    void twoClothsAreRefusedWithTheReason() throws IOException {
        Answer page = client.get(change(early, other));
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words()).contains("Not measurable").doesNotContain("ΔE00");
        assertThat(client.get("/pieces/V24-001/change/aligned.jpg?before=" + early + "&after=" + other)
                        .status())
                .isEqualTo(404);
    }

    /** Where both show the cloth, the later photograph laid over the earlier one agrees with it pixel by pixel. */
    @Test
    void theLaterPhotographIsSentLaidOverTheEarlier() throws IOException {
        Answer laid = client.get("/pieces/V24-001/change/aligned.jpg?before=" + early + "&after=" + moved);
        assertThat(laid.header("Content-Type")).isEqualTo("image/jpeg");
        BufferedImage over = ImageIO.read(new ByteArrayInputStream(laid.body()));
        BufferedImage under = ImageIO.read(new ByteArrayInputStream(Pictures.cloth(5, BLUE, 0, 0)));
        assertThat(over.getWidth()).isEqualTo(400);
        double off = 0;
        for (int y = 30; y < 270; y++) {
            for (int x = 30; x < 370; x++) {
                off += Math.abs((over.getRGB(x, y) >> 8 & 0xff) - (under.getRGB(x, y) >> 8 & 0xff));
            }
        }
        assertThat(off / (240 * 340)).isLessThan(6);
    }

    @Test
    void aPhotographOfAnotherPieceIsNotFound() throws IOException {
        assertThat(client.get(change(early, "0".repeat(64))).status()).isEqualTo(404);
        assertThat(client.get("/pieces/V24-001/change/aligned.jpg").status()).isEqualTo(404);
        assertThat(client.get("/pieces/V24-009/change").status()).isEqualTo(404);
    }
}
