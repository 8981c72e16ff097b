package tenterbook.web.colour;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.colour.space.ColourWords;
import tenterbook.colour.space.Lab;
import tenterbook.colour.target.MeasuredColour;
import tenterbook.colour.target.WhitePoint;
import tenterbook.facts.Colours;
import tenterbook.facts.PieceColour;
import tenterbook.imaging.Photo;
import tenterbook.search.index.PieceCard;
import tenterbook.web.page.Words;

/**
 * The measured colours of a piece side by side, each as wide as its share.
 *
 * @param swatches widest first, at most eight
 * @param named whether a person named them; otherwise they are the main colours of the cloth in a photograph
 * @param calibrated whether every one comes from a calibrated photograph
 * @param ofState the earlier state of the piece that they show; 0 where they show it as it now is, or where that is not asked
 */
public record ColourBand(List<Swatch> swatches, boolean named, boolean calibrated, int ofState) {
    /**
     * @param fill as {@code #rrggbb}
     * @param words the colour in words
     * @param name the maker's own name or the part it belongs to; may be empty
     * @param lab CIELAB, D65, 2° observer, in text
     * @param share of the band, 0 to 1
     * @param left where it begins, 0 to 1
     * @param colour as measured
     */
    public record Swatch(String fill, String words, String name, String lab, double share, double left, Lab colour) {
        /** The colour's value for the address of a search or a form, as measured: {@code 48.13,-5.02,-24.40}. */
        public String query() {
            return colour.text(2).replace(" ", "");
        }

        /** For people: the values for {@code white}, with its name and the observer. */
        public String text(WhitePoint white) {
            return WhitePoint.D65.adapt(colour, white).text(0) + " (" + white + ", " + MeasuredColour.TWO_DEGREES + ")";
        }
    }

    /** How wide a colour is shown whose share nobody measured, and the least width of any, as parts of the whole. */
    private static final double UNMEASURED = 0.1;

    private static final double LEAST = 0.03;

    public static ColourBand of(Colours colours) {
        return of(
                colours.shown(),
                colours.from() == Colours.From.NAMED,
                colours.calibrated(),
                colours.now() ? 0 : colours.state());
    }

    /** The band kept in the index with a piece. */
    public static ColourBand of(PieceCard card) {
        return of(card.band(), card.band().stream().anyMatch(colour -> colour.role() != null), false, 0);
    }

    /** @param palette of a photograph */
    public static ColourBand of(Photo photo, List<PaletteColour> palette) {
        return of(Colours.ofPalette(palette), false, !photo.calibration().equals(Photo.UNCALIBRATED), 0);
    }

    private static ColourBand of(List<PieceColour> colours, boolean named, boolean calibrated, int ofState) {
        List<PieceColour> widest = colours.stream()
                .sorted(Comparator.comparingDouble(ColourBand::share).reversed())
                .limit(8)
                .toList();
        double sum = widest.stream().mapToDouble(ColourBand::width).sum();
        List<Swatch> swatches = new ArrayList<>();
        double left = 0;
        for (PieceColour each : widest) {
            double share = width(each) / sum;
            String name = each.name().isEmpty() && each.role() != null ? Words.w(each.role()) : each.name();
            swatches.add(swatch(each.colour(), name, share, left));
            left += share;
        }
        return new ColourBand(List.copyOf(swatches), named, calibrated, ofState);
    }

    private static double share(PieceColour colour) {
        return colour.share() == null ? UNMEASURED : colour.share();
    }

    private static double width(PieceColour colour) {
        return Math.max(share(colour), LEAST);
    }

    public static Swatch swatch(Lab colour, String name, double share, double left) {
        return new Swatch(
                colour.srgb().hex(),
                Words.w(ColourWords.name(colour)),
                name,
                colour.text(0).replace(" ", ""),
                share,
                left,
                colour);
    }
}
