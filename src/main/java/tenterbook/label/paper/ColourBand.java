package tenterbook.label.paper;

import java.util.List;
import tenterbook.colour.Srgb;
import tenterbook.label.LabelText;
import tenterbook.label.PaletteColour;
import tenterbook.label.layout.Column;
import tenterbook.label.layout.Face;
import tenterbook.label.layout.Ink;
import tenterbook.label.layout.Line;
import tenterbook.label.layout.Mm;
import tenterbook.label.layout.Style;
import tenterbook.label.layout.Tone;

/**
 * The measured colours of a piece as a strip like a selvedge, each as tall as its share, with its name beside it. Where a share
 * was not measured all are equal and stand apart.
 */
final class ColourBand {
    private static final double WIDTH = 5;
    private static final double LEADER = 3.2;
    private static final Style NAME = Style.of(Face.TEXT, 6.8, 8, 6);

    private final List<PaletteColour> colours;
    private final LabelText text;

    ColourBand(LabelText text) {
        this.text = text;
        this.colours = text.colours();
    }

    /** Draws the band in a box; names are set to the right of the strip within {@code width} mm. */
    void draw(Ink ink, double x, double y, double width, double height) {
        boolean shares = colours.stream().allMatch(c -> c.share() != null)
                && colours.stream().anyMatch(c -> c.share() > 0);
        double sum = shares ? colours.stream().mapToDouble(PaletteColour::share).sum() : colours.size();
        double gap = shares ? 0 : 0.6;
        double leading = Mm.of(NAME.leading());
        double top = y;
        double least = y;
        long namesLeft = colours.stream().filter(c -> !c.name().isEmpty()).count();
        for (PaletteColour colour : colours) {
            double tall = height * (shares ? colour.share() : 1) / sum;
            Srgb screen = colour.colour().srgb();
            Tone tone = new Tone(screen.red(), screen.green(), screen.blue());
            ink.rectangle(x, top, WIDTH, tall - gap, text.request().blackOnly() ? tone.grey() : tone);
            if (!colour.name().isEmpty()) {
                double middle = top + (tall - gap) / 2;
                double latest = y + height - namesLeft * leading;
                double at = Math.max(least, Math.min(middle - leading / 2, latest));
                name(ink, colour.name(), x, middle, at + leading / 2, width);
                least = at + leading;
                namesLeft--;
            }
            top += tall;
        }
    }

    /** The least height for all names, in mm. */
    double leastHeight() {
        return colours.stream().filter(c -> !c.name().isEmpty()).count() * Mm.of(NAME.leading());
    }

    private void name(Ink ink, String name, double x, double middle, double nameMiddle, double width) {
        double from = x + WIDTH + 0.5;
        Tone hair = LabelDrawing.tone(LabelDrawing.HAIR, text);
        ink.line(from, middle, from + LEADER - 1, nameMiddle, LabelDrawing.HAIRLINE, hair);
        Column.SetColumn set = new Column(LabelDrawing.what(text, "name of a colour"))
                .add(name, NAME, 0)
                .set(ink.setter(), width - WIDTH - LEADER - 0.3, Mm.of(NAME.leading()));
        Line line = set.lines().get(0).line();
        double baseline = nameMiddle + Mm.of(line.style().size() * 0.46) / 2;
        ink.text(line, x + WIDTH + LEADER + 0.3, baseline, LabelDrawing.tone(LabelDrawing.QUIET, text));
    }
}
