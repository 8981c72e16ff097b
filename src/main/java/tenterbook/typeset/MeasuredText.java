package tenterbook.typeset;

import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tenterbook.words.Language;

/**
 * A text measured once, in parts of the size of type, so that breaking it at another size or width is plain arithmetic.
 * Positions count characters (code points).
 */
final class MeasuredText {
    /** What one place of the text sets: a face, its advance, and the kerning to the next. */
    private final Typeface[] faces;

    private final int[] points;
    /** Where each character begins; one more for the end. */
    private final double[] begins;

    private final int[] kerns;
    private final double tracking;
    private final Language language;
    private final double hyphen;
    private final int[] breaks;
    private int[] hyphens;

    MeasuredText(int[] points, Typeface[] faces, Typefaces read, TextStyle style, Language language) {
        this.points = points;
        this.faces = faces;
        this.tracking = style.tracking();
        this.language = language;
        this.kerns = new int[points.length];
        this.begins = new double[points.length + 1];
        for (int i = 0; i < points.length; i++) {
            Typefaces.Read face = read.get(faces[i]);
            int glyph = face.glyph(points[i]);
            double advance = face.advance(glyph) + tracking;
            if (i + 1 < points.length && faces[i + 1] == faces[i] && faces[i] != Typeface.FALLBACK) {
                int kern = face.kerning().between(glyph, face.glyph(points[i + 1]));
                kerns[i] = (int) Math.round(kern * 1000 / face.unitsPerEm());
                advance += kerns[i] / 1000.0;
            }
            begins[i + 1] = begins[i] + advance;
        }
        Typefaces.Read face = read.get(style.face());
        this.hyphen = face.advance(face.glyph('-')) + tracking;
        this.breaks = breaks(new String(points, 0, points.length));
    }

    private static int[] breaks(String text) {
        BreakIterator iterator = BreakIterator.getLineInstance(Locale.ROOT);
        iterator.setText(text);
        List<Integer> found = new ArrayList<>();
        for (int at = iterator.next(); at != BreakIterator.DONE; at = iterator.next()) {
            if (at == text.length() || !together(text, at)) {
                found.add(text.codePointCount(0, at));
            }
        }
        return found.stream().mapToInt(Integer::intValue).toArray();
    }

    /** What the rules of line breaking would part: a degree sign from its letter, and a number as 'V24-003' at its hyphen. */
    private static boolean together(String text, int at) {
        char before = text.charAt(at - 1);
        boolean inNumber = before == '-'
                && at > 1
                && Character.isLetterOrDigit(text.charAt(at - 2))
                && Character.isDigit(text.charAt(at));
        return before == '°' || inNumber;
    }

    int length() {
        return points.length;
    }

    /** Width from one place to another, without the tracking and kerning after the last character. */
    double width(int from, int to) {
        return to <= from ? 0 : begins[to] - begins[from] - kerns[to - 1] / 1000.0 - tracking;
    }

    /** The same with a hyphen after it. */
    double hyphenated(int from, int to) {
        return width(from, to) + tracking + hyphen;
    }

    /** Places after which a line may end, the last being the end. */
    int[] breaks() {
        return breaks;
    }

    /** Places before which a hyphen may be put. */
    int[] hyphens() {
        if (hyphens == null) {
            List<Integer> found = new ArrayList<>();
            for (int start = 0; start < points.length; start++) {
                int end = start;
                while (end < points.length && Character.isLetter(points[end])) {
                    end++;
                }
                for (int letters : hyphens(new String(points, start, end - start))) {
                    found.add(start + letters);
                }
                start = end;
            }
            hyphens = found.stream().mapToInt(Integer::intValue).toArray();
        }
        return hyphens;
    }

    private int[] hyphens(String word) {
        return language == Language.PORTUGUESE ? PortugueseHyphens.of(word) : Hyphens.of(word);
    }

    /** The place back from {@code to} where no blank stands before it. */
    int trimmed(int from, int to) {
        int end = to;
        while (end > from && points[end - 1] == ' ') {
            end--;
        }
        return end;
    }

    String text(int from, int to) {
        return new String(points, from, to - from);
    }

    /** A stretch as it is set, in runs of one face. */
    TextLine line(int from, int to, TextStyle style, boolean hyphenate) {
        List<TextLine.Run> runs = new ArrayList<>();
        int start = from;
        while (start < to) {
            int end = start + 1;
            while (end < to && faces[end] == faces[start]) {
                end++;
            }
            runs.add(run(start, end, style, hyphenate && end == to));
            start = end;
        }
        String text = text(from, to) + (hyphenate ? "\u00ad" : "");
        double width = hyphenate ? hyphenated(from, to) : width(from, to);
        return new TextLine(text, style, List.copyOf(runs), width * style.size());
    }

    private TextLine.Run run(int start, int end, TextStyle style, boolean hyphenate) {
        int[] kept = java.util.Arrays.copyOfRange(kerns, start, end + (hyphenate ? 1 : 0));
        kept[end - start - 1] = 0;
        if (hyphenate) {
            kept[end - start] = 0;
        }
        double width = begins[end] - begins[start] - kerns[end - 1] / 1000.0 + (hyphenate ? hyphen : 0);
        String text = text(start, end) + (hyphenate ? "-" : "");
        return new TextLine.Run(faces[start], text, kept, width * style.size());
    }
}
