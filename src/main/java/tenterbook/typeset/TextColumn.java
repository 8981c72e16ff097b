package tenterbook.typeset;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tenterbook.words.Written;

/**
 * Paragraphs one under another in a box. All type shrinks together, each style down to its own smallest size, until everything
 * fits.
 */
public final class TextColumn {
    /** The steps in which type shrinks, as parts of the full size. */
    private static final double STEP = 0.02;

    /**
     * A paragraph.
     *
     * @param before space above the first line, in points, besides the leading; none at the top of a column
     */
    public record Paragraph(String text, TextStyle style, double before) {}

    /**
     * A line in its place.
     *
     * @param baseline in points below the top of the column
     * @param paragraph which of the column's paragraphs it is of, from 0
     */
    public record Placed(TextLine line, double baseline, int paragraph) {}

    /**
     * A set column.
     *
     * @param lines from the top
     * @param height in points, to the foot of the last line's leading
     * @param scale at which the type was set, 1 or less
     */
    public record SetColumn(List<Placed> lines, double height, double scale) {
        private List<String> below(double foot) {
            return lines.stream()
                    .filter(p -> p.baseline + p.line.style().size() * 0.3 > foot)
                    .map(p -> p.line.text())
                    .toList();
        }
    }

    private final Written what;
    private final List<Paragraph> paragraphs = new ArrayList<>();

    /** @param what is set, for the message where it has no room */
    public TextColumn(Written what) {
        this.what = what;
    }

    /** How many paragraphs it has so far. */
    public int paragraphs() {
        return paragraphs.size();
    }

    public TextColumn add(String text, TextStyle style, double before) {
        if (!text.isBlank()) {
            paragraphs.add(new Paragraph(text, style, before));
        }
        return this;
    }

    public TextColumn addAll(List<String> texts, TextStyle style, double before) {
        for (int i = 0; i < texts.size(); i++) {
            add(texts.get(i), style, i == 0 ? before : 0);
        }
        return this;
    }

    /**
     * Sets the column.
     *
     * @param widthMm of the box
     * @param heightMm of the box
     * @throws DoesNotFit naming the words that have no room at the smallest size
     */
    public SetColumn set(LineBreaker setter, double widthMm, double heightMm) {
        double width = Mm.points(widthMm);
        double height = Mm.points(heightMm);
        double least = paragraphs.stream()
                .mapToDouble(p -> p.style().smallest() / p.style().size())
                .min()
                .orElse(1);
        double scale = 1;
        while (true) {
            Optional<SetColumn> set = at(setter, width, scale);
            if (set.isPresent() && set.get().height <= height + 1e-6) {
                return set.get();
            }
            if (scale <= least) {
                throw new DoesNotFit(
                        what,
                        widthMm,
                        heightMm,
                        set.isPresent() ? set.get().below(height) : tooWide(setter, width, scale));
            }
            scale = Math.max(least, scale - STEP);
        }
    }

    private Optional<SetColumn> at(LineBreaker setter, double width, double scale) {
        List<Placed> placed = new ArrayList<>();
        double y = 0;
        for (int at = 0; at < paragraphs.size(); at++) {
            Paragraph paragraph = paragraphs.get(at);
            TextStyle style = paragraph.style.shrunk(scale);
            Optional<List<TextLine>> lines = setter.wrapped(paragraph.text, style, width);
            if (lines.isEmpty()) {
                return Optional.empty();
            }
            y += placed.isEmpty() ? 0 : paragraph.before * style.size() / paragraph.style.size();
            for (TextLine line : lines.get()) {
                y += style.leading();
                placed.add(new Placed(line, y - (style.leading() - style.size() * 0.7) / 2, at));
            }
        }
        return Optional.of(new SetColumn(List.copyOf(placed), y, scale));
    }

    private List<String> tooWide(LineBreaker setter, double width, double scale) {
        return paragraphs.stream()
                .flatMap(p -> setter.tooWide(p.text, p.style.shrunk(scale), width).stream())
                .toList();
    }
}
