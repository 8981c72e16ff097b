package tenterbook.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.github.ajalt.colormath.model.RGB;
import com.github.ajalt.colormath.model.RGBColorSpaces;
import com.github.ajalt.colormath.model.XYZ;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.archive.record.PhotoRecords;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.palette.Region;
import tenterbook.colour.space.Ciede2000;
import tenterbook.colour.space.Lab;
import tenterbook.colour.space.LinearRgb;
import tenterbook.colour.space.SrgbCurve;
import tenterbook.colour.target.Calibration;
import tenterbook.colour.target.CardFinder;
import tenterbook.colour.target.CardOutline;
import tenterbook.colour.target.CardReading;
import tenterbook.colour.target.ChartCorrection;
import tenterbook.colour.target.ChartReference;
import tenterbook.colour.target.Correction;
import tenterbook.colour.target.KnownCard;
import tenterbook.colour.target.MeasuredColour;
import tenterbook.colour.target.WhitePoint;
import tenterbook.measure.Digest;

class PhotoMeasureTest {
    private static final Lab INDIGO = new Lab(44, -4, -21);
    private static final Lab LINEN = new Lab(80, 1, 8);
    private static final int WIDTH = 800;
    private static final int HEIGHT = 600;
    private static final Region CLOTH = Region.rectangle(0.1, 0.1, 0.8, 0.6);
    private static final Instant NOON = Instant.parse("2024-05-06T12:00:00Z");

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyOrientationGivesTheSameMeasuredColour(int orientation) throws IOException {
        byte[] jpeg = new ExifBytes().orientation(orientation).in(Corners.jpeg(stored(upright(), orientation)));
        Pixels pixels = open(jpeg).pixels();
        assertThat(pixels.width()).isEqualTo(WIDTH);

        CardFinder.Found card = CardFinder.find(pixels).orElseThrow();
        Correction correction =
                Correction.byGrey(CardReading.of(pixels, card.outline().inner()), KnownCard.grey18());
        MeasuredColour cloth = correction.measure(pixels, CLOTH, WhitePoint.D65);
        assertThat(Ciede2000.difference(cloth.lab(), INDIGO)).isLessThan(1);
        MeasuredColour raw = Correction.NONE.measure(pixels, CLOTH, WhitePoint.D65);
        assertThat(Ciede2000.difference(raw.lab(), INDIGO))
                .as("the cast was there")
                .isGreaterThan(4);
    }

    @Test
    void aPhotographWithoutACardHasNoneAndOneThatIsNotKeptDoesNotOpen() throws IOException {
        Pixels pixels = open(Corners.jpeg(400, 300)).pixels();
        assertThat(CardFinder.find(pixels)).isEmpty();
        assertThat(new PhotoMeasure(new Originals(folder)).open(Digest.of(new byte[] {1})))
                .isEmpty();
    }

    @Test
    void aLargeOriginalIsMeasuredAtWorkingSize() throws IOException {
        Pixels pixels = open(Corners.jpeg(4096, 1024)).pixels();
        assertThat(pixels.width()).isEqualTo(PhotoMeasure.LONG_EDGE);
        assertThat(pixels.height()).isEqualTo(512);
    }

    @Test
    void aCalibrationIsKeptInTheLedgersJsonAndMeasuresTheSameAgain() throws IOException {
        byte[] jpeg = Corners.jpeg(upright());
        Pixels pixels = open(jpeg).pixels();
        CardFinder.Found card = CardFinder.find(pixels).orElseThrow();
        Correction correction =
                Correction.byGrey(CardReading.of(pixels, card.outline().inner()), KnownCard.grey18());
        PhotoCalibration kept = PhotoCalibration.of(
                Digest.of(jpeg),
                correction,
                List.of(PhotoCalibration.MarkedCard.of(card.outline(), KnownCard.grey18())),
                NOON,
                "Inês Valderim");

        String json = PhotoRecords.CALIBRATION.toJson(kept).toString();
        assertThat(json)
                .contains("\"one grey card\"")
                .contains("\"18 % grey card\"")
                .contains(kept.photo().hex());
        PhotoCalibration read = PhotoRecords.CALIBRATION.fromText(json);
        assertThat(read).isEqualTo(kept);
        assertThat(read.correction().measure(pixels, CLOTH, WhitePoint.D50))
                .isEqualTo(correction.measure(pixels, CLOTH, WhitePoint.D50));
    }

    @Test
    void aCalibrationWithoutACardIsRefused() {
        Digest photo = Digest.of(new byte[] {1});
        assertThatThrownBy(() -> new PhotoCalibration(
                        photo,
                        Calibration.GREY_CARD,
                        List.of(),
                        List.of(),
                        List.of(),
                        null,
                        4.0,
                        null,
                        null,
                        "",
                        NOON,
                        "Tomé Quarral"))
                .hasMessageContaining("needs a card");
    }

    /** Linear sRGB to linear Display P3, from CSS Color Module Level 4; from memory, checked by colormath in the test above. */
    private static final double[][] TO_P3 = {{0.82246, 0.17754, 0}, {0.03319, 0.96681, 0}, {0.01708, 0.07240, 0.91052}};

    @Test
    void aColourOutsideSrgbIsMeasuredThroughTheFilesProfileUnclipped() throws IOException {
        for (int code : new int[] {0x00c800, 0x10a0c0, 0xe01010, 0x808080}) {
            BufferedImage flat = new BufferedImage(64, 64, BufferedImage.TYPE_INT_RGB);
            flat.setRGB(
                    0,
                    0,
                    64,
                    64,
                    java.util.Collections.nCopies(64 * 64, code).stream()
                            .mapToInt(each -> each)
                            .toArray(),
                    0,
                    64);
            Pixels pixels = open(ExifBytes.withProfile(Corners.jpeg(flat), ProfileBytes.displayP3()))
                    .pixels();
            XYZ expected = new RGB(
                            (code >> 16 & 255) / 255f,
                            (code >> 8 & 255) / 255f,
                            (code & 255) / 255f,
                            1,
                            RGBColorSpaces.INSTANCE.getDisplayP3())
                    .toXYZ();
            Lab lab = WhitePoint.D65.lab(new double[] {expected.getX(), expected.getY(), expected.getZ()});
            Lab measured = Correction.NONE
                    .measure(pixels, Region.WHOLE, WhitePoint.D65)
                    .lab();
            assertThat(Ciede2000.difference(measured, lab))
                    .as("code %06x: %s, expected %s", code, measured, lab)
                    .isLessThan(1);
        }
    }

    /** Cyan lies outside sRGB, where its red is clipped to nothing and the patch is left out. */
    @Test
    void noPatchOfAChartInAWideFileIsLeftOut() throws IOException {
        BufferedImage chart = chart();
        CardOutline outline = new CardOutline(Region.WHOLE.corners());
        byte[] jpeg = Corners.jpeg(chart);
        Pixels wide =
                open(ExifBytes.withProfile(jpeg, ProfileBytes.displayP3())).pixels();
        ChartCorrection found = ChartCorrection.of(wide, outline, ChartReference.FROM_NOVEMBER_2014);
        assertThat(found.faults()).isEmpty();
        assertThat(found.used()).isEqualTo(24);
        assertThat(found.holdOut()).isLessThan(1);
        Pixels clipped = new Pixels(wide.argb(), wide.width(), wide.height());
        assertThat(ChartCorrection.of(clipped, outline, ChartReference.FROM_NOVEMBER_2014)
                        .faults())
                .asString()
                .contains("Patch 18 (cyan) is too dark in a channel");
    }

    /** A chart without noise in the numbers of Display P3, as large as the picture. */
    private static BufferedImage chart() {
        BufferedImage image = new BufferedImage(660, 440, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        for (ChartReference.Patch patch : ChartReference.FROM_NOVEMBER_2014.patches()) {
            LinearRgb light = LinearRgb.of(patch.lab()).times(0.9);
            int[] code = new int[3];
            for (int k = 0; k < 3; k++) {
                double[] row = TO_P3[k];
                code[k] = SrgbCurve.encoded(row[0] * light.red() + row[1] * light.green() + row[2] * light.blue());
            }
            g.setColor(new Color(code[0], code[1], code[2]));
            g.fillRect((patch.number() - 1) % 6 * 110, (patch.number() - 1) / 6 * 110, 110, 110);
        }
        g.dispose();
        return image;
    }

    private PhotoMeasure.Opened open(byte[] jpeg) throws IOException {
        Originals originals = new Originals(folder);
        StoredOriginal stored = originals.store(new ByteArrayInputStream(jpeg), Originals.LIMIT_BYTES);
        return new PhotoMeasure(originals).open(stored.digest()).orElseThrow();
    }

    /** Linen, an indigo cloth and a turned grey card under warm light. */
    private static BufferedImage upright() {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(warm(LINEN));
        g.fillRect(0, 0, WIDTH, HEIGHT);
        g.setColor(warm(INDIGO));
        g.fill(new Rectangle2D.Double(60, 40, 620, 340));
        g.setColor(warm(KnownCard.grey18().lab()));
        g.fill(AffineTransform.getRotateInstance(0.1, 600, 500)
                .createTransformedShape(new Rectangle2D.Double(540, 460, 130, 84)));
        g.dispose();
        return image;
    }

    private static Color warm(Lab lab) {
        LinearRgb light = LinearRgb.of(lab);
        return new Color(
                SrgbCurve.encoded(1.1 * light.red()),
                SrgbCurve.encoded(0.9 * light.green()),
                SrgbCurve.encoded(0.7 * light.blue()));
    }

    /** How a camera stores an upright picture when it writes this orientation: JEITA CP-3451, tag 274, turned back. */
    private static BufferedImage stored(BufferedImage upright, int orientation) {
        int w = upright.getWidth();
        int h = upright.getHeight();
        boolean sideways = orientation >= 5;
        BufferedImage out = new BufferedImage(sideways ? h : w, sideways ? w : h, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                int rgb = upright.getRGB(x, y);
                switch (orientation) {
                    case 1 -> out.setRGB(x, y, rgb);
                    case 2 -> out.setRGB(w - 1 - x, y, rgb);
                    case 3 -> out.setRGB(w - 1 - x, h - 1 - y, rgb);
                    case 4 -> out.setRGB(x, h - 1 - y, rgb);
                    case 5 -> out.setRGB(y, x, rgb);
                    case 6 -> out.setRGB(y, w - 1 - x, rgb);
                    case 7 -> out.setRGB(h - 1 - y, w - 1 - x, rgb);
                    default -> out.setRGB(h - 1 - y, x, rgb);
                }
            }
        }
        return out;
    }
}
