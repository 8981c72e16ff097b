package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.Srgb;
import tenterbook.colour.target.Calibration;
import tenterbook.colour.target.CardOutline;
import tenterbook.colour.target.ChartReference;
import tenterbook.colour.target.Correction;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.ledger.Saved;
import tenterbook.measure.Digest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.Piece;

/** Calibrating photographs of the sample studio, whose casts and true grounds are known. */
class CalibrationTest {
    @TempDir
    static Path folder;

    private static SampleStudio studio;
    private static Client client;

    @BeforeAll
    static void open() {
        studio = SampleStudio.open(folder, Clock.systemUTC());
        client = new Client(studio.wiring().port());
    }

    @AfterAll
    static void close() {
        studio.close();
    }

    private static ColourRegion ground(Archive archive, String number) {
        Piece piece = archive.piece(number).orElseThrow();
        return piece.photos().get(0).regions().stream()
                .filter(region -> region.role() == ColourRole.GROUND)
                .findFirst()
                .orElseThrow();
    }

    /** The stated ground of V24-004 is L*a*b* 56, −18, 12 (the sample studio's table, src/main/resources/sample/cloths.csv). */
    @Test
    void aGreyCardFoundInThePictureBringsTheGroundNearerToItsTrueColourAndTheOldValueStays() throws IOException {
        Archive archive = studio.wiring().archive();
        String number = "V24-004";
        Lab stated = new Lab(56, -18, 12);
        Lab before = ground(archive, number).colour();
        String photo =
                archive.piece(number).orElseThrow().photos().get(0).photo().hex();
        String page = "/pieces/" + number + "/photos/" + photo;

        Answer found = client.post(page + "/find-card");
        assertThat(found.location()).contains("corners=");
        String corners = found.location()
                .replaceAll(".*corners=", "")
                .replaceAll("#.*", "")
                .replace('+', ' ');
        assertThat(client.post(page + "/calibrate", "corners", corners, "card", "grey18")
                        .status())
                .isEqualTo(303);
        assertThat(archive.ledger().find(Kinds.CALIBRATION, photo)).isPresent();
        assertThat(ground(archive, number).colour())
                .as("nothing changes unasked")
                .isEqualTo(before);

        assertThat(client.post(page + "/measure-again").status()).isEqualTo(303);
        ColourRegion after = ground(archive, number);
        assertThat(after.calibrated()).isTrue();
        assertThat(after.likelyError()).isGreaterThanOrEqualTo(8.2);
        assertThat(after.pixels()).isGreaterThan(100);
        assertThat(Ciede2000.difference(after.colour(), stated))
                .isLessThan(Ciede2000.difference(before, stated))
                .isLessThan(2.5);
        List<?> history = archive.ledger().history(Kinds.PIECE.key(number));
        assertThat(client.get("/history/piece/" + number).status()).isEqualTo(200);
        assertThat(history).hasSizeGreaterThan(1);
        assertThat(client.get(page).words())
                .contains("one grey card", "likely within ΔE00 8.", "half of them within 5.");
    }

    @Test
    void whatIsNoCardIsRefusedWithTheReasonAndChangesNothing() throws IOException {
        Archive archive = studio.wiring().archive();
        String photo =
                archive.piece("V24-010").orElseThrow().photos().get(0).photo().hex();
        String page = "/pieces/V24-010/photos/" + photo;
        long calibrations = archive.ledger().count(Kinds.CALIBRATION);

        Answer cloth = client.post(page + "/calibrate", "corners", "40,30 60,30 60,60 40,60", "card", "grey18");
        assertThat(cloth.status()).isEqualTo(422);
        assertThat(cloth.text()).contains("id=\"corners-problem\"");
        Answer words = client.post(page + "/calibrate", "corners", "here and there", "card", "grey18");
        assertThat(words.status()).isEqualTo(422);
        assertThat(words.words()).contains("four pairs");
        assertThat(words.field("corners")).isEqualTo("here and there");
        assertThat(archive.ledger().count(Kinds.CALIBRATION)).isEqualTo(calibrations);
    }

    private static String page(String number) {
        Piece piece = studio.wiring().archive().piece(number).orElseThrow();
        return "/pieces/" + number + "/photos/" + piece.photos().get(0).photo().hex();
    }

    @Test
    void aFieldOfACardInDoubtIsToldInItsPlaceAndEverythingTypedStays() throws IOException {
        String page = page("V24-010");
        long calibrations = studio.wiring().archive().ledger().count(Kinds.CALIBRATION);
        String[] typed = {
            "corners", "80,90 95,90 95,98 80,98",
            "card", "reflectance",
            "reflectance", "3O",
            "lab", "50,0,0",
            "black", "10,10 20,10 20,20 10,20",
            "blackReflectance", "four"
        };
        Answer answer = client.post(page + "/calibrate", typed);
        assertThat(answer.status()).isEqualTo(422);
        for (int i = 0; i < typed.length; i += 2) {
            assertThat(answer.field(typed[i])).isEqualTo(typed[i + 1]);
        }
        assertThat(answer.text()).contains("id=\"reflectance-problem\"", "id=\"blackReflectance-problem\"");
        assertThat(answer.words()).contains("found “3O”", "found “four”");

        Answer unsaid = client.post(page + "/calibrate", "corners", typed[1], "card", "reflectance", "reflectance", "");
        assertThat(unsaid.status()).as("never 18 % unasked").isEqualTo(422);
        assertThat(unsaid.field("card")).isEqualTo("reflectance");
        assertThat(client.post(page + "/calibrate", "corners", typed[1]).words())
                .contains("Say which card it is");
        assertThat(studio.wiring().archive().ledger().count(Kinds.CALIBRATION)).isEqualTo(calibrations);
    }

    @Test
    void aReflectanceThatCouldBePercentOrAShareIsRefusedUntilItsUnitIsGiven() throws IOException {
        String page = page("V24-004");
        long calibrations = studio.wiring().archive().ledger().count(Kinds.CALIBRATION);
        for (String[] each :
                new String[][] {{"1", "‘1 %’ or ‘100 %’"}, {"0.9", "‘0.9 %’ or ‘90 %’"}, {"0,18", "‘0.18 %’ or ‘18 %’"}
                }) {
            Answer answer = client.post(
                    page + "/calibrate",
                    "corners",
                    "here",
                    "card",
                    "reflectance",
                    "reflectance",
                    each[0],
                    "black",
                    "10,10 20,10 20,20 10,20",
                    "blackReflectance",
                    each[0]);
            assertThat(answer.status()).isEqualTo(422);
            assertThat(answer.text()).contains("id=\"reflectance-problem\"", "id=\"blackReflectance-problem\"");
            assertThat(answer.words().replace('\u00a0', ' ')).contains("found “" + each[0] + "”", each[1]);
            assertThat(answer.field("reflectance")).isEqualTo(each[0]);
        }
        for (String clear : List.of("1 %", "0,9%", "18", "100")) {
            assertThat(client.post(page + "/calibrate", "corners", "here", "card", "reflectance", "reflectance", clear)
                            .text())
                    .contains("id=\"corners-problem\"")
                    .doesNotContain("id=\"reflectance-problem\"");
        }
        assertThat(studio.wiring().archive().ledger().count(Kinds.CALIBRATION)).isEqualTo(calibrations);
    }

    @Test
    void aPartToMeasureThatIsNoneIsToldInItsPlaceAndEverythingTypedStays() throws IOException {
        long calibrations = studio.wiring().archive().ledger().count(Kinds.CALIBRATION);
        String[] typed = {"left", "abc", "top", "20", "right", "140", "bottom", "40", "role", "resist", "name", "veins"
        };
        Answer answer = client.post(page("V24-010") + "/colours", typed);
        assertThat(answer.status()).isEqualTo(422);
        for (int i = 0; i < typed.length; i += 2) {
            assertThat(answer.field(typed[i])).isEqualTo(typed[i + 1]);
        }
        assertThat(answer.text())
                .contains("id=\"left-problem\"", "id=\"right-problem\"")
                .doesNotContain("id=\"top-problem\"");
        Answer drawn = client.post(page("V24-010") + "/colours", "outline", "10,10 x", "name", "veins");
        assertThat(drawn.status()).isEqualTo(422);
        assertThat(drawn.field("outline")).isEqualTo("10,10 x");
        assertThat(drawn.field("name")).isEqualTo("veins");
        assertThat(studio.wiring().archive().ledger().count(Kinds.CALIBRATION)).isEqualTo(calibrations);
    }

    @Test
    void groundAndResistAreProposedWithTheirShares() throws IOException {
        Archive archive = studio.wiring().archive();
        String photo =
                archive.piece("V24-006").orElseThrow().photos().get(0).photo().hex();
        String words =
                client.get("/pieces/V24-006/photos/" + photo + "?propose=1").words();
        assertThat(words).contains("% of the cloth");
    }

    /** Calibrates the first photograph of a piece as if a chart were in it; the matrix is that of no real camera. */
    private static Photo withChart(Archive archive, String piece, Instant at) {
        Photo photo = photo(archive, piece);
        Correction chart = new Correction(
                Calibration.CHART,
                List.of(1.1, -0.1, 0.0, -0.1, 1.2, -0.1, 0.0, -0.1, 1.1),
                List.of(0.0, 0.0, 0.0),
                0.95,
                5.0,
                2.7,
                "");
        CardOutline outline =
                new CardOutline(Region.rectangle(0.1, 0.1, 0.4, 0.3).corners());
        archive.ledger()
                .write(
                        "Inês Valderim",
                        act -> act.save(
                                Kinds.CALIBRATION,
                                PhotoCalibration.of(
                                        photo.digest(),
                                        chart,
                                        List.of(new PhotoCalibration.MarkedCard(outline.corners(), "chart", null)),
                                        at,
                                        "Inês Valderim"),
                                0,
                                ""));
        return photo;
    }

    private static Photo photo(Archive archive, String piece) {
        Digest digest = archive.piece(piece).orElseThrow().photos().get(0).photo();
        return archive.ledger().find(Kinds.PHOTO, digest.hex()).orElseThrow().record();
    }

    @Test
    void theChartOfTheSameCameraIsOfferedByNameAndUsedOnlyWhereItIsChosen() throws IOException {
        Archive archive = studio.wiring().archive();
        for (String piece : List.of("V24-016", "V24-017", "V24-018")) {
            taken(archive, piece, "A maker, a model");
        }
        String page = page("V24-016");
        assertThat(client.get(page).text()).doesNotContain("name=\"profile\"");
        withChart(archive, "V24-017", Instant.parse("2024-06-01T10:00:00Z"));
        Photo chart = withChart(archive, "V24-018", Instant.parse("2024-06-02T10:00:00Z"));
        Answer offered = client.get(page);
        assertThat(offered.words())
                .contains("with the chart that " + chart.camera() + " photographed in " + chart.originalName())
                .contains("on 91 patches photographed by 2 phones");
        assertThat(offered.text())
                .contains("value=\"" + chart.digest().hex() + "\"")
                .doesNotContain("value=\"" + chart.digest().hex() + "\" checked");

        String corners = client.post(page + "/find-card")
                .location()
                .replaceAll(".*corners=", "")
                .replaceAll("#.*", "")
                .replace('+', ' ');
        assertThat(client.post(page + "/calibrate", "corners", corners, "card", "grey18")
                        .status())
                .isEqualTo(303);
        String photo = photo(archive, "V24-016").digest().hex();
        assertThat(archive.ledger().find(Kinds.CALIBRATION, photo).orElseThrow().record())
                .satisfies(alone -> assertThat(alone.how()).isEqualTo(Calibration.GREY_CARD))
                .satisfies(alone -> assertThat(alone.profile()).isNull());

        String[] chosen = {
            "corners", corners, "card", "grey18", "profile", chart.digest().hex()
        };
        assertThat(client.post(page + "/calibrate", chosen).status()).isEqualTo(303);
        PhotoCalibration used =
                archive.ledger().find(Kinds.CALIBRATION, photo).orElseThrow().record();
        assertThat(used.how()).isEqualTo(Calibration.CAMERA_PROFILE);
        assertThat(used.profile()).isEqualTo(chart.digest());
        assertThat(used.tone()).isEqualTo(0.95);
        assertThat(used.likelyError()).isGreaterThanOrEqualTo(6.5);
        assertThat(client.get(page).words())
                .contains("By a grey card and a chart by the same camera")
                .contains("are from the chart in " + chart.digest().brief());
    }

    @Test
    void theChartOfAnotherCameraIsRefused() throws IOException {
        Archive archive = studio.wiring().archive();
        Photo chart = withChart(archive, "V24-019", Instant.parse("2024-06-03T10:00:00Z"));
        taken(archive, "V24-012", "Another maker, another model");
        long calibrations = archive.ledger().count(Kinds.CALIBRATION);
        assertThat(client.get(page("V24-012")).text()).doesNotContain("name=\"profile\"");
        Answer refused = client.post(
                page("V24-012") + "/calibrate",
                "corners",
                "80,90 95,90 95,98 80,98",
                "card",
                "grey18",
                "profile",
                chart.digest().hex());
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.text()).contains("id=\"profile-problem\"");
        assertThat(refused.words())
                .contains("Another maker, another model", "no photograph by it is calibrated by a chart");
        assertThat(archive.ledger().count(Kinds.CALIBRATION)).isEqualTo(calibrations);
    }

    private static void taken(Archive archive, String piece, String camera) {
        Saved<Photo> photo = archive.ledger()
                .find(Kinds.PHOTO, photo(archive, piece).digest().hex())
                .orElseThrow();
        archive.ledger()
                .write(
                        "Inês Valderim",
                        act -> act.save(Kinds.PHOTO, byAnotherCamera(photo.record(), camera), photo.version(), ""));
    }

    private static Photo byAnotherCamera(Photo photo, String camera) {
        return new Photo(
                photo.digest(),
                photo.originalName(),
                photo.bytes(),
                photo.mediaType(),
                photo.width(),
                photo.height(),
                photo.orientation(),
                photo.taken(),
                camera,
                photo.lens(),
                photo.iccProfile(),
                photo.gps(),
                photo.viewable(),
                photo.notes(),
                photo.palette(),
                photo.calibration(),
                photo.cloth());
    }

    @Test
    void aChartInThePictureIsProposedAsOneAndCalibratesByItsCorners() throws IOException {
        Archive archive = studio.wiring().archive();
        byte[] picture = chart();
        assertThat(client.postFiles(
                                "/api/pieces/V24-001/photos", List.of(new Client.Part("files", "chart.png", picture)))
                        .status())
                .isEqualTo(201);
        String photo = Digest.of(picture).hex();
        String page = "/pieces/V24-001/photos/" + photo;

        String location = client.post(page + "/find-card").location();
        assertThat(location).contains("card=FROM_NOVEMBER_2014");
        Answer shown = client.get(location.replaceAll("#.*", ""));
        assertThat(shown.field("card")).isEqualTo("FROM_NOVEMBER_2014");
        assertThat(client.post(page + "/calibrate", "corners", shown.field("corners"), "card", "FROM_NOVEMBER_2014")
                        .status())
                .isEqualTo(303);
        assertThat(archive.ledger()
                        .find(Kinds.CALIBRATION, photo)
                        .orElseThrow()
                        .record()
                        .how())
                .isEqualTo(Calibration.CHART);
    }

    /** Drawn: a chart of 24 patches with dark gaps, on a light table. */
    private static byte[] chart() throws IOException {
        BufferedImage image = new BufferedImage(900, 700, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(new Color(0xcfc6b4));
        g.fillRect(0, 0, 900, 700);
        g.setColor(new Color(0x1c1c1c));
        g.fillRect(185, 185, 475, 320);
        for (ChartReference.Patch patch : ChartReference.FROM_NOVEMBER_2014.patches()) {
            Srgb seen = LinearRgb.of(patch.lab()).times(0.85).lab().srgb();
            g.setColor(new Color(seen.red(), seen.green(), seen.blue()));
            g.fillRect(194 + (patch.number() - 1) % 6 * 77, 194 + (patch.number() - 1) / 6 * 77, 70, 70);
        }
        g.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "png", out);
        return out.toByteArray();
    }
}
