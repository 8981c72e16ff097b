package tenterbook.imaging.pixels;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What stands in a JPEG file before its picture (ITU-T T.81, annex B): whether the picture is three ordinary bands, and its
 * colour profile (ICC.1:2010, B.4).
 *
 * @param plain whether it is 8 bits deep, of three bands, sequential, and of a process that every decoder knows; Java's
 *     decoder draws a progressive one many times over
 * @param profile the embedded profile, its parts joined; null if there is none or a part is missing
 * @param scanAt where the first scan's marker stands
 */
record JpegHead(boolean plain, int width, int height, byte @Nullable [] profile, int scanAt) {
    private static final byte[] PROFILE = "ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII);

    /** Empty if the segments cannot be followed. */
    static Optional<JpegHead> of(byte[] jpeg) {
        ByteBuffer in = ByteBuffer.wrap(jpeg);
        Map<Integer, byte[]> parts = new TreeMap<>();
        int expected = 0;
        boolean plain = false;
        int width = 0;
        int height = 0;
        int at = 2;
        while (at + 4 <= jpeg.length && jpeg[at] == (byte) 0xff) {
            int kind = jpeg[at + 1] & 0xff;
            int length = 2 + (in.getShort(at + 2) & 0xffff);
            if (kind == 0xda) {
                byte[] profile = parts.size() == expected && expected > 0 ? joined(parts) : null;
                return Optional.of(new JpegHead(plain, width, height, profile, at));
            }
            if (at + length > jpeg.length) {
                return Optional.empty();
            }
            if (kind >= 0xc0 && kind <= 0xc2 && length >= 17) {
                plain = kind != 0xc2 && jpeg[at + 4] == 8 && jpeg[at + 9] == 3;
                height = in.getShort(at + 5) & 0xffff;
                width = in.getShort(at + 7) & 0xffff;
            } else if (kind == 0xe2 && length > 18 && Arrays.equals(jpeg, at + 4, at + 16, PROFILE, 0, 12)) {
                parts.put(jpeg[at + 16] & 0xff, Arrays.copyOfRange(jpeg, at + 18, at + length));
                expected = jpeg[at + 17] & 0xff;
            }
            at += length;
        }
        return Optional.empty();
    }

    private static byte[] joined(Map<Integer, byte[]> parts) {
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        parts.values().forEach(whole::writeBytes);
        return whole.toByteArray();
    }
}
