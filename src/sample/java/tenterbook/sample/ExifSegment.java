package tenterbook.sample;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;

/**
 * The metadata a telephone writes into a JPEG, as the payload of an APP1 segment.
 *
 * @see "CIPA DC-008-2019, Exif 2.32: section 4.5 for the structure, 4.6 for the tags"
 */
final class ExifSegment {
    static final String MAKE = "Sarelho Optics";
    static final String MODEL = "SO-7";
    private static final DateTimeFormatter EXIF_TIME = DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss");
    private static final DateTimeFormatter EXIF_OFFSET = DateTimeFormatter.ofPattern("xxx");
    private static final int TIFF_HEADER = 8;

    private ExifSegment() {}

    /** Degrees, north and east positive. */
    record Position(double latitude, double longitude) {}

    /**
     * @param orientation 1, 3, 6 or 8 as in the Orientation tag
     * @param width stored pixels across
     * @param height stored pixels down
     * @param iso sensitivity, 1 to 65535
     * @param exposureParts the exposure lasted 1 / exposureParts second
     */
    record Shot(
            OffsetDateTime taken,
            int orientation,
            int width,
            int height,
            int iso,
            int exposureParts,
            @Nullable Position position) {
        Shot {
            if (orientation != 1 && orientation != 3 && orientation != 6 && orientation != 8) {
                throw new IllegalArgumentException(
                        "A telephone's picture is stored with orientation 1, 3, 6 or 8; found: " + orientation);
            }
        }
    }

    /** "Exif", two zero bytes and a big-endian TIFF block. */
    static byte[] of(Shot shot) {
        String time = EXIF_TIME.format(shot.taken());
        String offset = EXIF_OFFSET.format(shot.taken());
        Directory exif = new Directory()
                .rationals(0x829A, 1, shot.exposureParts())
                .rationals(0x829D, 18, 10)
                .shorts(0x8822, 2)
                .shorts(0x8827, shot.iso())
                .undefined(0x9000, "0232")
                .ascii(0x9003, time)
                .ascii(0x9004, time)
                .ascii(0x9010, offset)
                .ascii(0x9011, offset)
                .undefined(0x9101, "\1\2\3\0")
                .shorts(0x9207, 5)
                .shorts(0x9209, 16)
                .rationals(0x920A, 543, 100)
                .undefined(0xA000, "0100")
                .shorts(0xA001, 1)
                .longs(0xA002, shot.width())
                .longs(0xA003, shot.height())
                .shorts(0xA403, 0)
                .shorts(0xA405, 26);
        Directory main = new Directory()
                .ascii(0x010F, MAKE)
                .ascii(0x0110, MODEL)
                .shorts(0x0112, shot.orientation())
                .rationals(0x011A, 72, 1)
                .rationals(0x011B, 72, 1)
                .shorts(0x0128, 2)
                .ascii(0x0132, time)
                .shorts(0x0213, 1)
                .longs(0x8769, 0);
        Directory gps = shot.position() == null ? null : gps(shot.position());
        if (gps != null) {
            main.longs(0x8825, 0);
        }
        int exifAt = TIFF_HEADER + main.length();
        main.longs(0x8769, exifAt);
        if (gps != null) {
            main.longs(0x8825, exifAt + exif.length());
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
        out.writeBytes(ByteBuffer.allocate(TIFF_HEADER)
                .put((byte) 'M')
                .put((byte) 'M')
                .putShort((short) 42)
                .putInt(TIFF_HEADER)
                .array());
        out.writeBytes(main.bytes(TIFF_HEADER));
        out.writeBytes(exif.bytes(exifAt));
        if (gps != null) {
            out.writeBytes(gps.bytes(exifAt + exif.length()));
        }
        return out.toByteArray();
    }

    private static Directory gps(Position p) {
        return new Directory()
                .bytes(0x0000, 2, 3, 0, 0)
                .ascii(0x0001, p.latitude() < 0 ? "S" : "N")
                .rationals(0x0002, degrees(p.latitude()))
                .ascii(0x0003, p.longitude() < 0 ? "W" : "E")
                .rationals(0x0004, degrees(p.longitude()));
    }

    private static int[] degrees(double value) {
        double v = Math.abs(value);
        int whole = (int) v;
        int minutes = (int) ((v - whole) * 60);
        int seconds = (int) Math.round(((v - whole) * 60 - minutes) * 6000);
        return new int[] {whole, 1, minutes, 1, seconds, 100};
    }
}
