package tenterbook.imaging.pixels;

import tenterbook.colour.space.SrgbCurve;

/** The sRGB curve (IEC 61966-2-1) as tables, for work on millions of pixels. */
final class LinearLight {
    /** Light, 0 to 1, of level 0 to 255. */
    static final float[] OF_LEVEL = new float[256];

    private static final int STEPS = 1 << 14;
    /** For light up to 2, so that what rounding adds to 1 need not be looked for. */
    private static final byte[] LEVELS = new byte[2 * STEPS];
    /** Floats from here up to twice this are whole numbers: added to a small one, it leaves that in the lowest bits, rounded. */
    private static final float WHOLE = 1 << 23;

    static {
        for (int i = 0; i < 256; i++) {
            OF_LEVEL[i] = (float) SrgbCurve.linear(i);
        }
        for (int i = 0; i < LEVELS.length; i++) {
            LEVELS[i] = (byte) SrgbCurve.encoded(Math.min(1, (double) i / STEPS));
        }
    }

    private LinearLight() {}

    /** The level, 0 to 255, of light from 0 to less than 2; more than 1 counts as 1. */
    static int level(float light) {
        return LEVELS[Float.floatToRawIntBits(light * STEPS + WHOLE) & LEVELS.length - 1] & 0xff;
    }
}
