package tenterbook.typeset;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.words.Language;
import tenterbook.words.Message;

/** Measures and breaks text. */
public final class LineBreaker {
    /** A line shorter than its measure by more than this part gets the beginning of a hyphenated word. */
    private static final double LOOSE = 0.2;

    private final Typefaces faces;
    private final Language language;

    /** @param language by whose rules running text is hyphenated */
    public LineBreaker(Typefaces faces, Language language) {
        this.faces = faces;
        this.language = language;
    }

    /** For English text. */
    public LineBreaker(Typefaces faces) {
        this(faces, Language.ENGLISH);
    }

    /** A stretch of a text that makes a line. */
    private record Stretch(int from, int to, boolean hyphen) {}

    /**
     * Text on one line, however long.
     *
     * @throws UnsupportedCharacter if a character has no glyph, or the text would need to run from right to left
     */
    public TextLine line(String text, TextStyle style) {
        MeasuredText measured = measured(text, style);
        return measured.line(0, measured.length(), style, false);
    }

    private MeasuredText measured(String text, TextStyle style) {
        return faces.measured(text, style, () -> {
            int[] points = checked(text).codePoints().toArray();
            Typeface[] each = new Typeface[points.length];
            for (int i = 0; i < points.length; i++) {
                each[i] = faceOf(text, points[i], style.face());
            }
            return new MeasuredText(points, each, faces, style, language);
        });
    }

    private static String checked(String text) {
        String composed = Normalizer.normalize(text, Normalizer.Form.NFC)
                .replace("\u00ad", "")
                .replaceAll("[\\s&&[^\u00a0]]+", " ");
        composed.codePoints().forEach(point -> {
            byte direction = Character.getDirectionality(point);
            if (direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
                    || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC) {
                throw new UnsupportedCharacter(text, point, Message.of("layout.why.right-to-left"));
            }
            int type = Character.getType(point);
            if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
                throw new UnsupportedCharacter(text, point, Message.of("layout.why.accent"));
            }
            if (type == Character.CONTROL || type == Character.FORMAT || type == Character.SURROGATE) {
                throw new UnsupportedCharacter(text, point, Message.of("layout.why.invisible"));
            }
        });
        return composed;
    }

    private Typeface faceOf(String text, int point, Typeface wanted) {
        if (faces.get(wanted).glyph(point) != 0) {
            return wanted;
        }
        if (faces.get(Typeface.FALLBACK).glyph(point) != 0) {
            return Typeface.FALLBACK;
        }
        throw new UnsupportedCharacter(text, point, Message.of("layout.why.no-font"));
    }

    /** Lines no wider than {@code width} points; empty where a word alone is wider. */
    Optional<List<TextLine>> wrapped(String text, TextStyle style, double width) {
        MeasuredText measured = measured(text, style);
        // Tolerance for rounding, since shrunk type often fits its measure exactly.
        double ems = width / style.size() + 1e-9;
        Optional<List<Stretch>> stretches = broken(measured, style, ems);
        if (stretches.isPresent() && stretches.get().size() > 1) {
            List<Stretch> lines = stretches.get();
            stretches = Optional.of(
                    style.balanced()
                            ? even(measured, style, ems, lines)
                            : withoutLoneWord(measured, style, ems, lines));
        }
        return stretches.map(all -> all.stream()
                .map(each -> measured.line(each.from, each.to, style, each.hyphen))
                .toList());
    }

    /** Avoids a last line of one word, where a slightly narrower measure does so without a further line. */
    private static List<Stretch> withoutLoneWord(
            MeasuredText measured, TextStyle style, double ems, List<Stretch> lines) {
        for (double part = 1; part > 0.87; part -= 0.02) {
            Optional<List<Stretch>> narrower = broken(measured, style, ems * part);
            if (narrower.isEmpty() || narrower.get().size() > lines.size()) {
                break;
            }
            Stretch last = narrower.get().get(lines.size() - 1);
            if (measured.text(last.from, last.to).contains(" ")) {
                return narrower.get();
            }
        }
        return lines;
    }

    private static List<Stretch> even(MeasuredText measured, TextStyle style, double ems, List<Stretch> widest) {
        List<Stretch> lines = widest;
        // Evenly long lines: the narrowest measure that needs no further line.
        double low = ems / 2;
        double high = ems;
        while (high - low > 0.05) {
            double middle = (low + high) / 2;
            Optional<List<Stretch>> narrower = broken(measured, style, middle);
            if (narrower.isPresent() && narrower.get().size() <= lines.size()) {
                high = middle;
                lines = narrower.get();
            } else {
                low = middle;
            }
        }
        return lines;
    }

    private static Optional<List<Stretch>> broken(MeasuredText measured, TextStyle style, double ems) {
        List<Stretch> lines = new ArrayList<>();
        int end = measured.trimmed(0, measured.length());
        int at = 0;
        while (at < end && measured.text(at, at + 1).equals(" ")) {
            at++;
        }
        while (at < end) {
            int best = -1;
            int next = end;
            for (int place : measured.breaks()) {
                if (place <= at) {
                    continue;
                }
                if (measured.width(at, measured.trimmed(at, place)) > ems) {
                    next = place;
                    break;
                }
                best = place;
                if (place >= end) {
                    break;
                }
            }
            Stretch line = best < 0 ? null : new Stretch(at, Math.min(end, measured.trimmed(at, best)), false);
            if (style.hyphenated() && best < end) {
                line = hyphenated(measured, ems, at, next, line);
            }
            if (line == null) {
                return Optional.empty();
            }
            lines.add(line);
            at = line.hyphen ? line.to : best;
            while (at < end && measured.text(at, at + 1).equals(" ")) {
                at++;
            }
        }
        return Optional.of(lines);
    }

    /** The line with as much of the next word as can be hyphenated, where it would else be loose or empty. */
    private static Stretch hyphenated(MeasuredText measured, double ems, int at, int next, Stretch plain) {
        if (plain != null && measured.width(plain.from, plain.to) > ems * (1 - LOOSE)) {
            return plain;
        }
        Stretch best = plain;
        for (int place : measured.hyphens()) {
            if (place > (plain == null ? at : plain.to) && place < next && measured.hyphenated(at, place) <= ems) {
                best = new Stretch(at, place, true);
            }
        }
        return best;
    }

    /** The parts between allowed breaks that are wider than {@code width} points. */
    List<String> tooWide(String text, TextStyle style, double width) {
        MeasuredText measured = measured(text, style);
        List<String> wide = new ArrayList<>();
        int start = 0;
        for (int end : measured.breaks()) {
            int trimmed = measured.trimmed(start, end);
            if (measured.width(start, trimmed) * style.size() > width) {
                wide.add(measured.text(start, trimmed).strip());
            }
            start = end;
        }
        return wide;
    }
}
