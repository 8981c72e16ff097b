package tenterbook.typeset;

import java.util.List;

/**
 * One set line.
 *
 * @param text its text; a soft hyphen at the end is the hyphen of a broken word
 * @param style as set, after shrinking
 * @param width in points, without the tracking after the last letter
 */
public record TextLine(String text, TextStyle style, List<Run> runs, double width) {
    /**
     * A stretch in one face.
     *
     * @param kerns space after each character, in thousandths of the size; one for each code point
     * @param width in points
     */
    record Run(Typeface face, String text, int[] kerns, double width) {}
}
