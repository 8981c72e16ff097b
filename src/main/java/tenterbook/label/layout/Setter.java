package tenterbook.label.layout;

import java.text.BreakIterator;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;

/** Measures and breaks text. */
public final class Setter {
    private final Faces faces;

    public Setter(Faces faces) {
        this.faces = faces;
    }

    /**
     * Text on one line, however long.
     *
     * @throws CannotBeSet if a character has no glyph, or the text would need to run from right to left
     */
    public Line line(String text, Style style) {
        int[] points = checked(text).codePoints().toArray();
        List<Line.Run> runs = new ArrayList<>();
        double width = 0;
        int start = 0;
        while (start < points.length) {
            Face face = faceOf(text, points[start], style.face());
            int end = start + 1;
            while (end < points.length && faceOf(text, points[end], style.face()) == face) {
                end++;
            }
            Line.Run run = run(points, start, end, face, style);
            runs.add(run);
            width += run.width();
            start = end;
        }
        double trailing = points.length == 0 ? 0 : style.tracking() * style.size();
        String set = new String(points, 0, points.length);
        return new Line(set, style, List.copyOf(runs), width - trailing);
    }

    private Line.Run run(int[] points, int start, int end, Face face, Style style) {
        Faces.Read read = faces.get(face);
        int[] kerns = new int[end - start];
        double width = 0;
        for (int i = start; i < end; i++) {
            int glyph = read.glyph(points[i]);
            width += read.advance(glyph) + style.tracking();
            if (i + 1 < end && face != Face.FALLBACK) {
                int kern = read.kerning().between(glyph, read.glyph(points[i + 1]));
                kerns[i - start] = (int) Math.round(kern * 1000 / read.unitsPerEm());
                width += kerns[i - start] / 1000.0;
            }
        }
        return new Line.Run(face, new String(points, start, end - start), kerns, width * style.size());
    }

    private static String checked(String text) {
        String composed = Normalizer.normalize(text, Normalizer.Form.NFC)
                .replace("\u00ad", "")
                .replaceAll("[\\s&&[^\u00a0]]+", " ");
        composed.codePoints().forEach(point -> {
            byte direction = Character.getDirectionality(point);
            if (direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT
                    || direction == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC) {
                throw new CannotBeSet(text, point, "this program sets no script that runs from right to left");
            }
            int type = Character.getType(point);
            if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK) {
                throw new CannotBeSet(text, point, "an accent here has no letter made with it");
            }
            if (type == Character.CONTROL || type == Character.FORMAT || type == Character.SURROGATE) {
                throw new CannotBeSet(text, point, "there is an invisible character in it");
            }
        });
        return composed;
    }

    private Face faceOf(String text, int point, Face wanted) {
        if (faces.get(wanted).glyph(point) != 0) {
            return wanted;
        }
        if (faces.get(Face.FALLBACK).glyph(point) != 0) {
            return Face.FALLBACK;
        }
        throw new CannotBeSet(text, point, "no font here holds one of its characters");
    }

    /** Lines no wider than {@code width} points; empty where a word alone is wider. */
    Optional<List<Line>> wrapped(String text, Style style, double width) {
        Optional<List<Line>> lines = broken(text, style, width);
        if (lines.isEmpty() || lines.get().size() < 2) {
            return lines;
        }
        return style.balanced()
                ? Optional.of(even(text, style, width, lines.get()))
                : Optional.of(withoutLoneWord(text, style, width, lines.get()));
    }

    /** A last line of one word takes company, where a slightly narrower measure gives it and needs no further line. */
    private List<Line> withoutLoneWord(String text, Style style, double width, List<Line> lines) {
        for (double part = 1; part > 0.87; part -= 0.02) {
            Optional<List<Line>> narrower = broken(text, style, width * part);
            if (narrower.isEmpty() || narrower.get().size() > lines.size()) {
                break;
            }
            if (narrower.get().get(lines.size() - 1).text().contains(" ")) {
                return narrower.get();
            }
        }
        return lines;
    }

    private List<Line> even(String text, Style style, double width, List<Line> widest) {
        List<Line> lines = widest;
        // Evenly long lines: the narrowest measure that needs no further line.
        double low = width / 2;
        double high = width;
        while (high - low > 1) {
            double middle = (low + high) / 2;
            Optional<List<Line>> narrower = broken(text, style, middle);
            if (narrower.isPresent() && narrower.get().size() <= lines.size()) {
                high = middle;
                lines = narrower.get();
            } else {
                low = middle;
            }
        }
        return lines;
    }

    private Optional<List<Line>> broken(String text, Style style, double width) {
        List<Line> lines = new ArrayList<>();
        String rest = checked(text).strip();
        while (!rest.isEmpty()) {
            BreakIterator breaks = BreakIterator.getLineInstance(Locale.ROOT);
            breaks.setText(rest);
            Line best = null;
            int end = 0;
            for (int at = breaks.next(); at != BreakIterator.DONE; at = breaks.next()) {
                Line line = line(rest.substring(0, at).stripTrailing(), style);
                if (line.width() > width) {
                    break;
                }
                best = line;
                end = at;
            }
            if (best == null) {
                return Optional.empty();
            }
            lines.add(best);
            rest = rest.substring(end).stripLeading();
        }
        return Optional.of(lines);
    }

    /** The parts between allowed breaks that are wider than {@code width} points. */
    List<String> tooWide(String text, Style style, double width) {
        BreakIterator breaks = BreakIterator.getLineInstance(Locale.ROOT);
        String plain = checked(text);
        breaks.setText(plain);
        int[] ends = IntStream.generate(breaks::next)
                .takeWhile(at -> at != BreakIterator.DONE)
                .toArray();
        List<String> wide = new ArrayList<>();
        int start = 0;
        for (int end : ends) {
            String part = plain.substring(start, end).strip();
            if (line(part, style).width() > width) {
                wide.add(part);
            }
            start = end;
        }
        return wide;
    }
}
