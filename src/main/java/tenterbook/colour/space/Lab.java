package tenterbook.colour.space;

import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * A CIELAB colour (CIE 15), illuminant D65, 2° observer. Values under D50, as from many instruments and print tables, must be
 * adapted first; {@code tenterbook.colour.target.MeasuredColour} names its white.
 *
 * @param lightness L*, 0 black to 100 white
 * @param a a*, green (negative) to red (positive), unitless
 * @param b b*, blue (negative) to yellow (positive), unitless
 */
public record Lab(double lightness, double a, double b) {
    /** How far outside 0 to 1 a linear component may lie and still count as inside: half of a 16-bit step. */
    private static final double GAMUT_SLACK = 1e-5;

    /** @throws IllegalArgumentException if a component is NaN or infinite, naming which one */
    public Lab {
        finite("L", lightness);
        finite("a", a);
        finite("b", b);
    }

    /**
     * Reads three numbers such as {@code 34, -2, -25}, separated by commas, semicolons or spaces. A typographic minus
     * (U+2212) or dash (U+2013) is taken as a minus; the decimal mark is a full stop.
     *
     * @throws IllegalArgumentException if there are not three numbers, or if one is out of range (L 0 to 100, a and b
     *     within 150 of zero), saying which
     */
    public static Lab parse(String text) {
        String[] parts = text == null
                ? new String[0]
                : text.strip().replace('\u2212', '-').replace('\u2013', '-').split("\\s*[,;\\s]\\s*");
        if (parts.length != 3) {
            throw unreadable(text, Message.of("colour.lab.not-three", "found", text == null ? 0 : parts.length));
        }
        double[] values = new double[3];
        for (int i = 0; i < 3; i++) {
            try {
                values[i] = Double.parseDouble(parts[i]);
            } catch (NumberFormatException e) {
                throw unreadable(text, Message.of("colour.lab.not-a-number", "found", parts[i]));
            }
        }
        if (!(values[0] >= 0 && values[0] <= 100)) {
            throw unreadable(text, Message.of("colour.lab.lightness", "found", parts[0]));
        }
        if (!(Math.abs(values[1]) <= 150)) {
            throw unreadable(text, Message.of("colour.lab.a", "found", parts[1]));
        }
        if (!(Math.abs(values[2]) <= 150)) {
            throw unreadable(text, Message.of("colour.lab.b", "found", parts[2]));
        }
        return new Lab(values[0], values[1], values[2]);
    }

    /** C*, distance from grey: 0 or more, unitless. */
    public double chroma() {
        return Math.hypot(a, b);
    }

    /** h, the hue angle, from 0 to below 360: 0 red, 90 yellow, 180 green, 270 blue. 0 for a pure grey. */
    public double hueDegrees() {
        double degrees = Math.toDegrees(Math.atan2(b, a));
        if (degrees < 0) {
            degrees += 360;
        }
        return degrees >= 360 ? 0 : degrees + 0.0;
    }

    /** The screen colour, each component clamped. */
    public Srgb srgb() {
        double[] linear = SrgbToLab.linearOf(lightness, a, b);
        return new Srgb(SrgbCurve.encoded(linear[0]), SrgbCurve.encoded(linear[1]), SrgbCurve.encoded(linear[2]));
    }

    /** For reading, one decimal: {@code 34.0, -2.0, -25.0}; {@link #parse} takes it back. */
    public String text() {
        return text(1);
    }

    /** The same with this many decimals. Every page and paper rounds here, so that one colour reads the same everywhere. */
    public String text(int decimals) {
        return Decimals.plain(lightness, decimals) + ", " + Decimals.plain(a, decimals) + ", "
                + Decimals.plain(b, decimals);
    }

    private static void finite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw Refusal.of("colour.lab.not-finite", "part", name, "found", NumberWords.plain(value));
        }
    }

    private static Refusal unreadable(String text, Message reason) {
        return Refusal.of("colour.lab.unreadable", "why", reason, "found", String.valueOf(text));
    }
}
