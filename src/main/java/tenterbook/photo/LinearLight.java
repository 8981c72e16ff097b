package tenterbook.photo;

import tenterbook.colour.SrgbCurve;

/** The sRGB curve (IEC 61966-2-1) as tables, for work on millions of pixels. */
final class LinearLight {
    /** Light, 0 to 1, of level 0 to 255. */
    static final float[] OF_LEVEL = new float[256];

    private static final int STEPS = 1 << 14;
    private static final byte[] LEVELS = new byte[STEPS + 1];

    static {
        for (int i = 0; i < 256; i++) {
            OF_LEVEL[i] = (float) SrgbCurve.linear(i);
        }
        for (int i = 0; i <= STEPS; i++) {
            LEVELS[i] = (byte) SrgbCurve.encoded((double) i / STEPS);
        }
    }

    private LinearLight() {}

    /** The level, 0 to 255, of light from 0 to 1; more than 1 counts as 1. */
    static int level(float light) {
        return LEVELS[Math.min(STEPS, (int) (light * STEPS + 0.5f))] & 0xff;
    }
}
