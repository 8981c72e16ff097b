package tenterbook.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.exif.GpsDirectory;
import com.drew.metadata.icc.IccDirectory;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.time.OffsetDateTime;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** What is written is read back by metadata-extractor, which knows nothing of this room. */
class JpegFileTest {
    private static final OffsetDateTime TAKEN = OffsetDateTime.parse("2024-05-21T12:55:57+01:00");

    private static ExifSegment.Shot shot(int orientation, ExifSegment.Position position) {
        return new ExifSegment.Shot(TAKEN, orientation, 64, 48, 125, 160, position);
    }

    private static Metadata read(byte[] jpeg) throws Exception {
        Metadata metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(jpeg));
        for (Directory directory : metadata.getDirectories()) {
            assertThat(directory.getErrors()).as(directory.getName()).isEmpty();
        }
        return metadata;
    }

    @Test
    void exifIsReadBackAsWritten() throws Exception {
        Metadata metadata = read(JpegFile.bytes(picture(), shot(1, null), false));
        ExifIFD0Directory main = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
        ExifSubIFDDirectory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        assertThat(main.getString(ExifIFD0Directory.TAG_MAKE)).isEqualTo("Sarelho Optics");
        assertThat(main.getString(ExifIFD0Directory.TAG_MODEL)).isEqualTo("SO-7");
        assertThat(main.getInt(ExifIFD0Directory.TAG_ORIENTATION)).isEqualTo(1);
        assertThat(exif.getString(ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL)).isEqualTo("2024:05:21 12:55:57");
        assertThat(exif.getString(ExifSubIFDDirectory.TAG_TIME_ZONE_ORIGINAL)).isEqualTo("+01:00");
        assertThat(exif.getDateOriginal().toInstant()).isEqualTo(TAKEN.toInstant());
        assertThat(exif.getInt(ExifSubIFDDirectory.TAG_ISO_EQUIVALENT)).isEqualTo(125);
        assertThat(exif.getRational(ExifSubIFDDirectory.TAG_EXPOSURE_TIME).doubleValue())
                .isEqualTo(1 / 160.0);
        assertThat(exif.getDoubleObject(ExifSubIFDDirectory.TAG_FNUMBER)).isEqualTo(1.8);
        assertThat(exif.getDoubleObject(ExifSubIFDDirectory.TAG_FOCAL_LENGTH)).isEqualTo(5.43);
        assertThat(exif.getInt(ExifSubIFDDirectory.TAG_COLOR_SPACE)).isEqualTo(1);
        assertThat(exif.getInt(ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH)).isEqualTo(64);
        assertThat(metadata.getFirstDirectoryOfType(GpsDirectory.class)).isNull();
        assertThat(metadata.getFirstDirectoryOfType(IccDirectory.class)).isNull();
    }

    @Test
    void aPositionAndAProfileAreReadBackWhereGiven() throws Exception {
        ExifSegment.Position position = new ExifSegment.Position(0.2141, -30.4832);
        Metadata metadata = read(JpegFile.bytes(picture(), shot(1, position), true));
        GpsDirectory gps = metadata.getFirstDirectoryOfType(GpsDirectory.class);
        assertThat(gps.getGeoLocation().getLatitude()).isEqualTo(0.2141, within(1e-5));
        assertThat(gps.getGeoLocation().getLongitude()).isEqualTo(-30.4832, within(1e-5));
        IccDirectory icc = metadata.getFirstDirectoryOfType(IccDirectory.class);
        assertThat(icc.getString(IccDirectory.TAG_COLOR_SPACE)).startsWith("RGB");
    }

    /** Where the first stored pixel is seen, after Exif 2.32 section 4.6.4, tag Orientation. */
    @Test
    void pixelsAreStoredTurnedSoThatTheOrientationSetsThemUpright() throws Exception {
        assertCornerStoredFirst(1, 0, 0);
        assertCornerStoredFirst(3, 63, 47);
        assertCornerStoredFirst(6, 63, 0);
        assertCornerStoredFirst(8, 0, 47);
    }

    private static void assertCornerStoredFirst(int orientation, int x, int y) throws Exception {
        BufferedImage upright = picture();
        int beginX = x == 0 ? 0 : 48;
        int beginY = y == 0 ? 0 : 32;
        for (int dy = 0; dy < 16; dy++) {
            for (int dx = 0; dx < 16; dx++) {
                upright.setRGB(beginX + dx, beginY + dy, 0xF0F0F0);
            }
        }
        byte[] jpeg = JpegFile.bytes(upright, shot(orientation, null), false);
        assertThat(read(jpeg)
                        .getFirstDirectoryOfType(ExifIFD0Directory.class)
                        .getInt(ExifIFD0Directory.TAG_ORIENTATION))
                .isEqualTo(orientation);
        BufferedImage stored = ImageIO.read(new ByteArrayInputStream(jpeg));
        boolean swap = orientation > 4;
        assertThat(stored.getWidth()).isEqualTo(swap ? 48 : 64);
        assertThat(stored.getRGB(3, 3) & 255).as("orientation " + orientation).isGreaterThan(200);
        assertThat(stored.getRGB(stored.getWidth() - 4, 3) & 255).isLessThan(100);
        assertThat(stored.getRGB(3, stored.getHeight() - 4) & 255).isLessThan(100);
    }

    @Test
    void anOrientationThatNoTelephoneWritesIsRefused() {
        assertThatThrownBy(() -> shot(5, null))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("found: 5");
    }

    private static BufferedImage picture() {
        return new BufferedImage(64, 48, BufferedImage.TYPE_INT_RGB);
    }
}
