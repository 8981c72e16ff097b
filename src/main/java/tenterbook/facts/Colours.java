package tenterbook.facts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.colour.palette.PaletteColour;
import tenterbook.imaging.Photo;
import tenterbook.measure.Digest;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;

/**
 * The colours of a piece and where they come from: those a person named on photographs of the newest state that has any
 * colour, else the palettes of that state's front photographs (of any of its photographs where no front one has a palette).
 *
 * @param named each as it stands on its photograph
 * @param palette shares averaged where there are several photographs, so that they never add up to more than the piece; greatest
 *     share first within each photograph
 * @param state which state of the piece they show, from 1
 * @param now whether that is the state the piece is in; if not, it was dyed again since and no photograph shows it
 * @param calibrated whether every one of {@link #shown} comes from a calibrated photograph; false where there is none
 */
public record Colours(List<PieceColour> named, List<PieceColour> palette, int state, boolean now, boolean calibrated) {
    /** Least share of a palette entry; smaller ones are dust, a seam or the table. */
    static final double LEAST_SHARE = 0.02;

    /** The source of the colours. */
    public enum From {
        /** A person named them on a photograph. */
        NAMED,
        /** The palette of a whole photograph, background and all. */
        PALETTE,
        NOTHING
    }

    public Colours {
        named = List.copyOf(named);
        palette = List.copyOf(palette);
    }

    static Colours of(Piece piece, Map<Digest, Photo> photos) {
        List<PiecePhoto> coloured = piece.photos().stream()
                .filter(photo ->
                        !photo.regions().isEmpty() || !palette(photos, photo).isEmpty())
                .toList();
        int state = coloured.stream().mapToInt(PiecePhoto::state).max().orElse(piece.state());
        List<PiecePhoto> newest =
                coloured.stream().filter(photo -> photo.state() == state).toList();
        List<PiecePhoto> pictured = newest.stream()
                .filter(photo -> !palette(photos, photo).isEmpty())
                .toList();
        List<PiecePhoto> front = pictured.stream()
                .filter(photo -> photo.role() == PhotoRole.FRONT)
                .toList();
        List<PiecePhoto> counted = front.isEmpty() ? pictured : front;
        List<ColourRegion> regions =
                newest.stream().flatMap(photo -> photo.regions().stream()).toList();
        List<PieceColour> palette = new ArrayList<>();
        for (PiecePhoto photo : counted) {
            for (PaletteColour entry : palette(photos, photo)) {
                if (entry.share() >= LEAST_SHARE) {
                    palette.add(new PieceColour(entry.colour(), Math.min(1, entry.share()) / counted.size(), ""));
                }
            }
        }
        boolean calibrated = regions.isEmpty()
                ? !counted.isEmpty()
                        && counted.stream()
                                .noneMatch(photo ->
                                        photos.get(photo.photo()).calibration().equals(Photo.UNCALIBRATED))
                : regions.stream().allMatch(ColourRegion::calibrated);
        return new Colours(
                regions.stream()
                        .map(region -> new PieceColour(region.colour(), region.share(), region.name(), region.role()))
                        .toList(),
                palette,
                state,
                state == piece.state(),
                calibrated);
    }

    /** The palette of one photograph, without named colours. */
    public static List<PieceColour> ofPalette(Photo photo) {
        return photo.palette().stream()
                .map(entry -> new PieceColour(entry.colour(), Math.min(1, entry.share()), ""))
                .toList();
    }

    private static List<PaletteColour> palette(Map<Digest, Photo> photos, PiecePhoto photo) {
        Photo found = photos.get(photo.photo());
        return found == null ? List.of() : found.palette();
    }

    public From from() {
        if (!named.isEmpty()) {
            return From.NAMED;
        }
        return palette.isEmpty() ? From.NOTHING : From.PALETTE;
    }

    /** The colours that a page shows: the named ones, else the palette. */
    public List<PieceColour> shown() {
        return named.isEmpty() ? palette : named;
    }

    /** The named colours for paper, each role and name once, the greatest share first. None where they show an earlier state. */
    public List<PieceColour> ofToday() {
        Map<String, PieceColour> once = new LinkedHashMap<>();
        if (now) {
            named.forEach(colour -> once.putIfAbsent(colour.role() + "/" + colour.name(), colour));
        }
        return once.values().stream()
                .sorted(Comparator.comparingDouble(colour -> colour.share() == null ? 0 : -colour.share()))
                .toList();
    }

    /**
     * Named colours and palette together, for finding pieces by colour. A named colour has a share only where there is no
     * palette, which would count its area twice.
     */
    public List<PieceColour> all() {
        List<PieceColour> all = new ArrayList<>();
        named.forEach(colour -> all.add(new PieceColour(
                colour.colour(), palette.isEmpty() ? colour.share() : null, colour.name(), colour.role())));
        all.addAll(palette);
        return all;
    }
}
