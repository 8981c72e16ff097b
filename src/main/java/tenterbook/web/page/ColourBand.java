package tenterbook.web.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import tenterbook.colour.ColourWords;
import tenterbook.colour.Lab;
import tenterbook.colour.card.MeasuredColour;
import tenterbook.colour.card.WhitePoint;
import tenterbook.measure.Digest;
import tenterbook.photo.Photo;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.search.PieceCard;

/**
 * The measured colours of a piece side by side, each as wide as its share.
 *
 * @param swatches widest first, at most eight
 * @param named whether a person named them; otherwise they are the palette of a whole photograph, background and all
 * @param calibrated whether every one comes from a calibrated photograph
 */
public record ColourBand(List<Swatch> swatches, boolean named, boolean calibrated) {
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

        /** For reading, told against {@code white}, which it names with the observer. */
        public String told(WhitePoint white) {
            return WhitePoint.D65.adapt(colour, white).text(0) + " (" + white + ", " + MeasuredColour.TWO_DEGREES + ")";
        }
    }

    private record Part(Lab colour, String name, double share) {}

    public static ColourBand of(Piece piece, Function<Digest, Optional<Photo>> photos) {
        List<PiecePhoto> now = piece.photos().stream()
                .filter(photo -> photo.state() == piece.state())
                .toList();
        List<Part> named = new ArrayList<>();
        boolean calibrated = true;
        for (PiecePhoto photo : now.isEmpty() ? piece.photos() : now) {
            for (ColourRegion region : photo.regions()) {
                String name = region.name().isEmpty() ? region.role().toString() : region.name();
                named.add(new Part(region.colour(), name, region.share() == null ? 0.1 : region.share()));
                calibrated &= region.calibrated();
            }
        }
        if (!named.isEmpty()) {
            return of(named, true, calibrated);
        }
        return (now.isEmpty() ? piece.photos() : now)
                .stream()
                        .map(photo -> photos.apply(photo.photo()))
                        .flatMap(Optional::stream)
                        .findFirst()
                        .map(ColourBand::of)
                        .orElse(new ColourBand(List.of(), false, false));
    }

    /** The band kept in the index with a piece. */
    public static ColourBand of(PieceCard card) {
        boolean named = card.band().stream().anyMatch(band -> !band.role().isEmpty());
        List<Part> parts = card.band().stream()
                .filter(band -> !named || !band.role().isEmpty())
                .map(band -> new Part(
                        band.colour(),
                        band.role().isEmpty() ? "" : band.name().isEmpty() ? band.role() : band.name(),
                        band.share() == null ? 0.1 : band.share()))
                .toList();
        return of(parts, named, false);
    }

    public static ColourBand of(Photo photo) {
        return of(
                photo.palette().stream()
                        .map(colour -> new Part(colour.colour(), "", colour.share()))
                        .toList(),
                false,
                !photo.calibration().equals(Photo.UNCALIBRATED));
    }

    private static ColourBand of(List<Part> parts, boolean named, boolean calibrated) {
        List<Part> widest = parts.stream()
                .sorted(Comparator.comparingDouble(Part::share).reversed())
                .limit(8)
                .toList();
        double sum = widest.stream()
                .mapToDouble(part -> Math.max(part.share(), 0.03))
                .sum();
        List<Swatch> swatches = new ArrayList<>();
        double left = 0;
        for (Part part : widest) {
            double share = Math.max(part.share(), 0.03) / sum;
            swatches.add(swatch(part.colour(), part.name(), share, left));
            left += share;
        }
        return new ColourBand(List.copyOf(swatches), named, calibrated);
    }

    public static Swatch swatch(Lab colour, String name, double share, double left) {
        return new Swatch(
                colour.srgb().hex(),
                ColourWords.of(colour),
                name,
                colour.text(0).replace(" ", ""),
                share,
                left,
                colour);
    }
}
