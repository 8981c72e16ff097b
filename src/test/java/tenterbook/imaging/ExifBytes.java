package tenterbook.imaging;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Writes an Exif segment as cameras do (JEITA CP-3451, big-endian TIFF inside APP1), and places segments in JPEGs. */
public final class ExifBytes {
    private record Entry(int tag, int type, int count, byte[] value) {}

    private final List<Entry> main = new ArrayList<>();
    private final List<Entry> exif = new ArrayList<>();
    private final List<Entry> gps = new ArrayList<>();

    public ExifBytes orientation(int value) {
        main.add(number(0x0112, value));
        return this;
    }

    public ExifBytes camera(String make, String model) {
        main.add(text(0x010f, make));
        main.add(text(0x0110, model));
        return this;
    }

    public ExifBytes taken(String time, String offset) {
        exif.add(text(0x9003, time));
        if (offset != null) {
            exif.add(text(0x9011, offset));
        }
        return this;
    }

    public ExifBytes settings(String lens, int iso, int exposureDivisor) {
        exif.add(new Entry(0x829a, 5, 1, ints(1, exposureDivisor)));
        exif.add(number(0x8827, iso));
        exif.add(number(0xa403, 1));
        exif.add(text(0xa434, lens));
        return this;
    }

    public ExifBytes colourSpace(int code) {
        exif.add(number(0xa001, code));
        return this;
    }

    public ExifBytes coordinates(int north, int west) {
        gps.add(text(1, "N"));
        gps.add(new Entry(2, 5, 3, ints(north, 1, 30, 1, 15, 1)));
        gps.add(text(3, "W"));
        gps.add(new Entry(4, 5, 3, ints(west, 1, 20, 1, 10, 1)));
        return this;
    }

    /** The TIFF structure alone. */
    byte[] tiff() {
        ByteBuffer out = ByteBuffer.allocate(4096);
        out.putShort((short) 0x4d4d).putShort((short) 42).putInt(8);
        int pointers = (exif.isEmpty() ? 0 : 1) + (gps.isEmpty() ? 0 : 1);
        int exifAt = 8 + size(main, pointers);
        int gpsAt = exifAt + (exif.isEmpty() ? 0 : size(exif, 0));
        List<Entry> first = new ArrayList<>(main);
        if (!exif.isEmpty()) {
            first.add(new Entry(0x8769, 4, 1, ints(exifAt)));
        }
        if (!gps.isEmpty()) {
            first.add(new Entry(0x8825, 4, 1, ints(gpsAt)));
        }
        directory(out, first);
        if (!exif.isEmpty()) {
            directory(out, exif);
        }
        if (!gps.isEmpty()) {
            directory(out, gps);
        }
        byte[] bytes = new byte[out.position()];
        out.flip().get(bytes);
        return bytes;
    }

    /** The same JPEG with this Exif segment directly after its start. */
    public byte[] in(byte[] jpeg) {
        byte[] tiff = tiff();
        byte[] payload = new byte[6 + tiff.length];
        System.arraycopy("Exif\0\0".getBytes(StandardCharsets.ISO_8859_1), 0, payload, 0, 6);
        System.arraycopy(tiff, 0, payload, 6, tiff.length);
        return withSegment(jpeg, 0xe1, payload);
    }

    public static byte[] withSegment(byte[] jpeg, int kind, byte[] payload) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        out.writeBytes(
                new byte[] {(byte) 0xff, (byte) kind, (byte) (payload.length + 2 >> 8), (byte) (payload.length + 2)});
        out.writeBytes(payload);
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }

    public static byte[] withProfile(byte[] jpeg, byte[] profile) {
        byte[] payload = new byte[14 + profile.length];
        System.arraycopy("ICC_PROFILE\0\1\1".getBytes(StandardCharsets.ISO_8859_1), 0, payload, 0, 14);
        System.arraycopy(profile, 0, payload, 14, profile.length);
        return withSegment(jpeg, 0xe2, payload);
    }

    private static void directory(ByteBuffer out, List<Entry> unordered) {
        List<Entry> entries =
                unordered.stream().sorted(Comparator.comparingInt(Entry::tag)).toList();
        int dataAt = out.position() + 2 + 12 * entries.size() + 4;
        out.putShort((short) entries.size());
        ByteArrayOutputStream data = new ByteArrayOutputStream();
        for (Entry entry : entries) {
            out.putShort((short) entry.tag).putShort((short) entry.type).putInt(entry.count);
            if (entry.value.length <= 4) {
                out.put(entry.value).put(new byte[4 - entry.value.length]);
            } else {
                out.putInt(dataAt + data.size());
                data.writeBytes(entry.value);
                data.writeBytes(new byte[entry.value.length % 2]);
            }
        }
        out.putInt(0).put(data.toByteArray());
    }

    private static int size(List<Entry> entries, int more) {
        int size = 2 + 12 * (entries.size() + more) + 4;
        for (Entry entry : entries) {
            size += entry.value.length > 4 ? entry.value.length + entry.value.length % 2 : 0;
        }
        return size;
    }

    private static Entry number(int tag, int value) {
        return new Entry(tag, 3, 1, new byte[] {(byte) (value >> 8), (byte) value});
    }

    private static Entry text(int tag, String text) {
        byte[] bytes = (text + "\0").getBytes(StandardCharsets.US_ASCII);
        return new Entry(tag, 2, bytes.length, bytes);
    }

    private static byte[] ints(int... values) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * values.length).order(ByteOrder.BIG_ENDIAN);
        for (int value : values) {
            bytes.putInt(value);
        }
        return bytes.array();
    }
}
