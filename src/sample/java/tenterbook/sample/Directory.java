package tenterbook.sample;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/**
 * One image file directory: fields in rising order of tag, values of up to four bytes in place, longer ones behind.
 *
 * @see "TIFF revision 6.0, section 2"
 */
final class Directory {
    private static final int BYTE = 1;
    private static final int ASCII = 2;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int UNDEFINED = 7;
    private static final int ENTRY = 12;

    private record Value(int type, int count, byte[] data) {
        /** Values start on a word boundary. */
        int padded() {
            return data.length <= 4 ? 0 : data.length + (data.length & 1);
        }
    }

    private final Map<Integer, Value> values = new TreeMap<>();

    Directory ascii(int tag, String text) {
        byte[] data = (text + "\0").getBytes(StandardCharsets.US_ASCII);
        return put(tag, new Value(ASCII, data.length, data));
    }

    Directory undefined(int tag, String text) {
        byte[] data = text.getBytes(StandardCharsets.ISO_8859_1);
        return put(tag, new Value(UNDEFINED, data.length, data));
    }

    Directory bytes(int tag, int... numbers) {
        ByteBuffer data = ByteBuffer.allocate(numbers.length);
        for (int n : numbers) {
            data.put((byte) n);
        }
        return put(tag, new Value(BYTE, numbers.length, data.array()));
    }

    Directory shorts(int tag, int number) {
        return put(
                tag,
                new Value(
                        SHORT,
                        1,
                        ByteBuffer.allocate(2).putShort((short) number).array()));
    }

    Directory longs(int tag, int number) {
        return put(tag, new Value(LONG, 1, ByteBuffer.allocate(4).putInt(number).array()));
    }

    /** Numerators and denominators by turns. */
    Directory rationals(int tag, int... parts) {
        ByteBuffer data = ByteBuffer.allocate(4 * parts.length);
        for (int part : parts) {
            data.putInt(part);
        }
        return put(tag, new Value(RATIONAL, parts.length / 2, data.array()));
    }

    private Directory put(int tag, Value value) {
        values.put(tag, value);
        return this;
    }

    int length() {
        return 2
                + ENTRY * values.size()
                + 4
                + values.values().stream().mapToInt(Value::padded).sum();
    }

    /** The directory as it stands at that offset in the TIFF block; no directory follows it. */
    byte[] bytes(int offset) {
        ByteBuffer out = ByteBuffer.allocate(length());
        int behind = 2 + ENTRY * values.size() + 4;
        out.putShort((short) values.size());
        for (Map.Entry<Integer, Value> entry : values.entrySet()) {
            Value v = entry.getValue();
            out.putShort(entry.getKey().shortValue()).putShort((short) v.type()).putInt(v.count());
            if (v.data().length <= 4) {
                out.put(v.data()).position(out.position() + 4 - v.data().length);
            } else {
                out.putInt(offset + behind);
                out.put(behind, v.data());
                behind += v.padded();
            }
        }
        return out.array();
    }
}
