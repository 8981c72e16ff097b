package tenterbook.search.recognition;

import java.nio.ByteBuffer;
import java.util.Arrays;

/**
 * The distinctive places of a picture, each with a description of its surroundings that is the same at any turn and size. Places
 * are in parts of the picture's longer side, so that a shape keeps its angles.
 */
final class PhotoFeatures {
    /** Numbers that describe one place (SURF; Bay, Tuytelaars and Van Gool, 2006). */
    static final int NUMBERS = 64;

    /** So many places at most: 146 KB. */
    static final int MOST = 1800;

    /** What a unit of the description is in whole numbers. */
    private static final double UNIT = 220;

    private static final int HEAD = 12;
    private static final int ROW = 4 * Short.BYTES + 1 + NUMBERS + Long.BYTES;
    private static final double FINE = 65_535;
    /** Largest radius that is kept, in parts of the longer side. */
    private static final double WIDEST = 0.5;

    final int count;
    /** Height and width in parts of the longer side, so that one of them is 1. */
    final float width;

    final float height;
    final float[] x;
    final float[] y;
    final float[] radius;
    /** Radians. */
    final float[] angle;
    /** 1 where the place is lighter than what surrounds it, 0 where it is darker. */
    final byte[] light;

    final byte[] numbers;
    /** The description shortened, see {@link Codes}. */
    final long[] codes;

    private PhotoFeatures(int count, float width, float height) {
        this.count = count;
        this.width = width;
        this.height = height;
        x = new float[count];
        y = new float[count];
        radius = new float[count];
        angle = new float[count];
        light = new byte[count];
        numbers = new byte[NUMBERS * count];
        codes = new long[count];
    }

    /** Fills features one by one, the most distinctive first. */
    static final class Builder {
        private final PhotoFeatures made;
        private int filled;

        Builder(int most, double width, double height) {
            double longer = Math.max(width, height);
            made = new PhotoFeatures(most, (float) (width / longer), (float) (height / longer));
        }

        boolean full() {
            return filled == made.count;
        }

        void add(double x, double y, double radius, double angle, boolean light, double[] description) {
            made.x[filled] = (float) x;
            made.y[filled] = (float) y;
            made.radius[filled] = (float) radius;
            made.angle[filled] = (float) angle;
            made.light[filled] = (byte) (light ? 1 : 0);
            for (int i = 0; i < NUMBERS; i++) {
                long whole = Math.round(UNIT * description[i]);
                made.numbers[NUMBERS * filled + i] = (byte) Math.max(-127, Math.min(127, whole));
            }
            made.codes[filled] = Codes.code(made, filled);
            filled++;
        }

        /** As read back from its bytes, so that a fresh picture and a kept one are compared alike. */
        PhotoFeatures done() {
            return of(made.bytes(filled));
        }
    }

    byte[] bytes() {
        return bytes(count);
    }

    private byte[] bytes(int rows) {
        ByteBuffer out = ByteBuffer.allocate(HEAD + ROW * rows);
        out.putInt(rows).putFloat(width).putFloat(height);
        for (int i = 0; i < rows; i++) {
            out.putShort(fine(x[i]));
            out.putShort(fine(y[i]));
            out.putShort(fine(radius[i] / WIDEST));
            out.putShort(fine(angle[i] / (2 * Math.PI) + 0.5));
            out.put(light[i]);
            out.put(numbers, NUMBERS * i, NUMBERS);
            out.putLong(codes[i]);
        }
        return out.array();
    }

    /** @throws IllegalArgumentException if these are no features */
    static PhotoFeatures of(byte[] bytes) {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        int rows = bytes.length < HEAD ? -1 : in.getInt();
        if (rows < 0 || rows > MOST || bytes.length != HEAD + ROW * rows) {
            throw new IllegalArgumentException("bytes: " + bytes.length + ", places: " + rows);
        }
        PhotoFeatures read = new PhotoFeatures(rows, in.getFloat(), in.getFloat());
        for (int i = 0; i < rows; i++) {
            read.x[i] = part(in.getShort());
            read.y[i] = part(in.getShort());
            read.radius[i] = (float) (WIDEST * part(in.getShort()));
            read.angle[i] = (float) (2 * Math.PI * (part(in.getShort()) - 0.5));
            read.light[i] = in.get();
            in.get(read.numbers, NUMBERS * i, NUMBERS);
            read.codes[i] = in.getLong();
        }
        return read;
    }

    private static short fine(double part) {
        return (short) Math.round(FINE * Math.max(0, Math.min(1, part)));
    }

    private static float part(short fine) {
        return (float) (Short.toUnsignedInt(fine) / FINE);
    }

    /** The same of the picture's mirror image, left and right exchanged. */
    PhotoFeatures mirrored() {
        PhotoFeatures mirror = new PhotoFeatures(count, width, height);
        for (int i = 0; i < count; i++) {
            mirror.x[i] = width - x[i];
            mirror.angle[i] = (float) (angle[i] > 0 ? Math.PI - angle[i] : -Math.PI - angle[i]);
            for (int row = 0; row < 4; row++) {
                for (int column = 0; column < 4; column++) {
                    int from = NUMBERS * i + 4 * (4 * row + column);
                    int to = NUMBERS * i + 4 * (4 * (3 - row) + column);
                    mirror.numbers[to] = numbers[from];
                    mirror.numbers[to + 1] = numbers[from + 1];
                    mirror.numbers[to + 2] = (byte) -numbers[from + 2];
                    mirror.numbers[to + 3] = numbers[from + 3];
                }
            }
        }
        System.arraycopy(y, 0, mirror.y, 0, count);
        System.arraycopy(radius, 0, mirror.radius, 0, count);
        System.arraycopy(light, 0, mirror.light, 0, count);
        for (int i = 0; i < count; i++) {
            mirror.codes[i] = Codes.code(mirror, i);
        }
        return mirror;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PhotoFeatures features && Arrays.equals(bytes(), features.bytes());
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes());
    }
}
