package tenterbook.imaging;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/** Writes a small RGB profile of the matrix and gamma kind (ICC.1:2001-04, version 2). */
public final class ProfileBytes {
    private ProfileBytes() {}

    /**
     * A profile like Adobe RGB (1998): gamma 563/256 and the primaries adapted to D50. The primaries' XYZ are from memory;
     * the test that uses them compares with colormath's own Adobe RGB, so a wrong number would show.
     */
    public static byte[] likeAdobeRgb() {
        return profile(
                new double[][] {{0.60974, 0.31111, 0.01947}, {0.20528, 0.62567, 0.06087}, {0.14919, 0.06322, 0.74457}},
                out -> ascii(out, "curv").putInt(0).putInt(1).putShort((short) 563));
    }

    /**
     * Display P3: the primaries of SMPTE RP 431-2 (x, y of red 0.680, 0.320, green 0.265, 0.690, blue 0.150, 0.060) with the
     * white D65, as XYZ adapted to D50 by the Bradford transform, and the curve of sRGB (IEC 61966-2-1) as a parametric one of
     * type 3. The XYZ are worked out from those figures, apart from the program; its tests compare with colormath's own
     * Display P3.
     */
    public static byte[] displayP3() {
        return profile(
                new double[][] {{0.51512, 0.24120, -0.00105}, {0.29198, 0.69225, 0.04189}, {0.15710, 0.06657, 0.78407}},
                out -> {
                    ascii(out, "para").putInt(0).putShort((short) 3).putShort((short) 0);
                    for (double number : new double[] {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045}) {
                        out.putInt(fixed(number));
                    }
                });
    }

    private static byte[] profile(double[][] primaries, java.util.function.Consumer<ByteBuffer> curve) {
        byte[] name = "Wide test space".getBytes(StandardCharsets.US_ASCII);
        int descLength = 12 + name.length + 1 + 8 + 3 + 67;
        String[] tags = {"desc", "wtpt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC", "cprt"};
        ByteBuffer out = ByteBuffer.allocate(2048);
        out.position(128);
        out.putInt(tags.length);
        int table = out.position();
        int data = table + 12 * tags.length;
        for (String tag : tags) {
            int start = data;
            out.position(data);
            switch (tag) {
                case "desc" -> {
                    ascii(out, "desc").putInt(0).putInt(name.length + 1).put(name);
                    out.position(start + descLength);
                }
                case "wtpt" -> xyz(out, 0.9642, 1, 0.8249);
                case "rXYZ" -> xyz(out, primaries[0]);
                case "gXYZ" -> xyz(out, primaries[1]);
                case "bXYZ" -> xyz(out, primaries[2]);
                case "cprt" -> ascii(out, "text").putInt(0).put("none\0".getBytes(StandardCharsets.US_ASCII));
                default -> curve.accept(out);
            }
            int length = out.position() - start;
            data = out.position() + 3 & ~3;
            out.position(table);
            ascii(out, tag).putInt(start).putInt(length);
            table = out.position();
        }
        out.position(0);
        out.putInt(data).putInt(0).putInt(0x02400000);
        ascii(ascii(ascii(out, "mntr"), "RGB "), "XYZ ");
        out.putShort((short) 2024)
                .putShort((short) 1)
                .putShort((short) 1)
                .putShort((short) 0)
                .putInt(0);
        ascii(out, "acsp");
        out.position(68);
        out.putInt(fixed(0.9642)).putInt(fixed(1)).putInt(fixed(0.8249));
        byte[] bytes = new byte[data];
        out.position(0);
        out.get(bytes);
        return bytes;
    }

    private static void xyz(ByteBuffer out, double... values) {
        ascii(out, "XYZ ").putInt(0);
        for (double value : values) {
            out.putInt(fixed(value));
        }
    }

    private static int fixed(double value) {
        return (int) Math.round(value * 65536);
    }

    private static ByteBuffer ascii(ByteBuffer out, String text) {
        return out.put(text.getBytes(StandardCharsets.US_ASCII));
    }
}
