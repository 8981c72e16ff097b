package tenterbook.labelling.paper;

import java.util.List;
import tenterbook.facts.PieceColour;
import tenterbook.labelling.LabelText;
import tenterbook.measure.NumberWords;
import tenterbook.typeset.Mm;
import tenterbook.typeset.PdfCanvas;
import tenterbook.typeset.PrintColour;
import tenterbook.typeset.TextColumn;
import tenterbook.typeset.TextLine;
import tenterbook.typeset.TextStyle;
import tenterbook.typeset.Typeface;
import tenterbook.words.Refusal;

/**
 * The measured colours of a piece as a strip, each as long as its share, with its name beside it. Where a share was not
 * measured all are equal and stand apart.
 */
final class ColourBand {
    private static final double WIDTH = 5;
    private static final double LEADER = 3.2;
    private static final double KEY = 2.1;
    private static final TextStyle NAME = TextStyle.of(Typeface.TEXT, 6.8, 8, 6);

    private final List<PieceColour> colours;
    private final LabelText text;
    private final boolean shares;
    private final double sum;

    ColourBand(LabelText text) {
        this.text = text;
        this.colours = text.colours();
        this.shares = colours.stream().allMatch(c -> c.share() != null)
                && colours.stream().anyMatch(c -> c.share() > 0);
        this.sum = shares ? colours.stream().mapToDouble(PieceColour::share).sum() : colours.size();
    }

    boolean empty() {
        return colours.isEmpty();
    }

    private double part(PieceColour colour) {
        return (shares ? colour.share() : 1) / sum;
    }

    private double gap() {
        return shares ? 0 : 0.6;
    }

    private long named() {
        return colours.stream().filter(c -> !c.name().isEmpty()).count();
    }

    private TextLine name(PdfCanvas ink, PieceColour colour, double widthMm) {
        return new TextColumn(LabelDrawing.what(text, "colour-name"))
                .add(colour.name(), NAME, 0)
                .set(ink.setter(), widthMm, Mm.of(NAME.leading()))
                .lines()
                .get(0)
                .line();
    }

    private static double raised(TextLine line) {
        return Mm.of(line.style().size() * 0.46) / 2;
    }

    private PrintColour quiet() {
        return LabelDrawing.tone(LabelDrawing.QUIET, text);
    }

    private PrintColour hair() {
        return LabelDrawing.tone(LabelDrawing.HAIR, text);
    }

    /** Upright in a box; names are set to the right of the strip within {@code width} mm. */
    void upright(PdfCanvas ink, double x, double y, double width, double height) {
        double leading = Mm.of(NAME.leading());
        double top = y;
        double least = y;
        long namesLeft = named();
        for (int i = 0; i < colours.size(); i++) {
            PieceColour colour = colours.get(i);
            double tall = height * part(colour);
            Swatch.draw(ink, text, i, x, top, WIDTH, tall - gap());
            if (!colour.name().isEmpty()) {
                double middle = top + (tall - gap()) / 2;
                double latest = y + height - namesLeft * leading;
                double at = Math.max(least, Math.min(middle - leading / 2, latest)) + leading / 2;
                double from = x + WIDTH + 0.5;
                ink.line(from, middle, from + LEADER - 1, at, LabelDrawing.HAIRLINE, hair());
                TextLine line = name(ink, colour, width - WIDTH - LEADER - 0.3);
                ink.text(line, x + WIDTH + LEADER + 0.3, at + raised(line), quiet());
                least = at + leading / 2;
                namesLeft--;
            }
            top += tall;
        }
    }

    /** The least height of {@link #upright} for all names, in mm. */
    double leastHeight() {
        return named() * Mm.of(NAME.leading());
    }

    /** Down the left side from above to below, names running upwards beside it; returns the right side of the names. */
    double selvedge(PdfCanvas ink, double x, double y, double width, double height, double namesFrom, double namesTo) {
        double top = y;
        double gapOfNames = 2.5;
        List<TextLine> names = colours.stream()
                .map(c -> c.name().isEmpty() ? null : name(ink, c, namesTo - namesFrom))
                .toList();
        double left = names.stream()
                .filter(n -> n != null)
                .mapToDouble(n -> Mm.of(n.width()) + gapOfNames)
                .sum();
        if (left - gapOfNames > namesTo - namesFrom) {
            throw Refusal.of(
                    "label.refused.colour-names",
                    "band",
                    LabelDrawing.what(text, "band"),
                    "width",
                    NumberWords.decimals(namesTo - namesFrom, 0));
        }
        double least = namesFrom;
        for (int i = 0; i < colours.size(); i++) {
            double tall = height * part(colours.get(i));
            Swatch.draw(ink, text, i, x, top, width, tall - gap());
            TextLine name = names.get(i);
            if (name != null) {
                double length = Mm.of(name.width());
                double middle = top + tall / 2;
                double at = Math.max(least, Math.min(middle - length / 2, namesTo - left + gapOfNames));
                ink.upwards(x + width + 2.6, at + length, up -> up.text(name, 0, 0, quiet()));
                least = at + length + gapOfNames;
                left -= length + gapOfNames;
            }
            top += tall;
        }
        return x + width + 3.2;
    }

    /** Across; its key is set apart with {@link #key}. */
    void across(PdfCanvas ink, double x, double y, double width, double height) {
        double left = x;
        for (int i = 0; i < colours.size(); i++) {
            double wide = width * part(colours.get(i));
            Swatch.draw(ink, text, i, left, y, wide - gap(), height);
            left += wide;
        }
    }

    /** Small squares with names, one under another; the height in mm, drawn or not. */
    double key(PdfCanvas ink, double x, double y, double width, boolean draw) {
        double row = Mm.of(NAME.leading()) + 0.4;
        double down = 0;
        for (int i = 0; i < colours.size(); i++) {
            if (colours.get(i).name().isEmpty()) {
                continue;
            }
            if (draw) {
                TextLine name = name(ink, colours.get(i), width - KEY - 1.2);
                double middle = y + down + KEY / 2;
                Swatch.draw(ink, text, i, x, middle - KEY / 2, KEY, KEY);
                ink.text(name, x + KEY + 1.4, middle + raised(name), quiet());
            }
            down += row;
        }
        return down;
    }
}
