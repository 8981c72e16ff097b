package tenterbook.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tenterbook.colour.ColourWords;
import tenterbook.colour.Lab;
import tenterbook.colour.PaletteColour;
import tenterbook.photo.Photo;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.ColourRole;
import tenterbook.piece.PhotoRole;
import tenterbook.piece.PiecePhoto;

/**
 * The colours of a piece as it now is: those named on photographs of its newest photographed state, and the palettes of
 * that state's front photographs (of any photograph where no front one has a palette).
 *
 * <p>Shares come from the palettes, averaged where there are several photographs, so that they never add up to more than the
 * piece. A named region lies on an area the palette has counted already, so it counts with its share only where there is no
 * palette.
 */
final class PieceColours {
    /** A palette entry smaller than this is not a colour of the piece but dust, a seam or the table. */
    static final double LEAST_SHARE = 0.02;

    private PieceColours() {}

    /**
     * @param share that counts in sums; null where it does not or was not measured
     * @param part of the dyeing, for a named region; null for a colour of the palette
     */
    record Colour(Lab lab, Double share, ColourRole part, String name) {
        String role() {
            return part == null ? "" : part.toString();
        }
    }

    static List<Colour> of(PieceFacts facts) {
        List<PiecePhoto> telling = facts.piece().photos().stream()
                .filter(photo -> photo.regions().stream().anyMatch(region -> region.colour() != null)
                        || !palette(facts, photo).isEmpty())
                .toList();
        int state = telling.stream().mapToInt(PiecePhoto::state).max().orElse(1);
        List<PiecePhoto> now =
                telling.stream().filter(photo -> photo.state() == state).toList();
        List<PiecePhoto> pictured =
                now.stream().filter(photo -> !palette(facts, photo).isEmpty()).toList();
        List<PiecePhoto> front = pictured.stream()
                .filter(photo -> photo.role() == PhotoRole.FRONT)
                .toList();
        List<PiecePhoto> counted = front.isEmpty() ? pictured : front;
        List<Colour> colours = new ArrayList<>();
        for (PiecePhoto photo : now) {
            for (ColourRegion region : photo.regions()) {
                if (region.colour() != null) {
                    String name = region.name().isEmpty() ? ColourWords.of(region.colour()) : region.name();
                    colours.add(new Colour(
                            region.colour(), counted.isEmpty() ? region.share() : null, region.role(), name));
                }
            }
        }
        for (PiecePhoto photo : counted) {
            for (PaletteColour entry : palette(facts, photo)) {
                if (entry.share() >= LEAST_SHARE) {
                    colours.add(new Colour(
                            entry.colour(), entry.share() / counted.size(), null, ColourWords.of(entry.colour())));
                }
            }
        }
        return colours;
    }

    private static List<PaletteColour> palette(PieceFacts facts, PiecePhoto photo) {
        Photo found = facts.photos().get(photo.photo());
        return found == null || found.palette() == null ? List.of() : found.palette();
    }

    /** The band of a card: by share, regions without one first, at most twelve. */
    static List<PieceCard.Band> band(List<Colour> colours) {
        return colours.stream()
                .sorted(Comparator.comparingDouble(colour -> colour.share() == null ? -2 : -colour.share()))
                .limit(12)
                .map(colour -> new PieceCard.Band(colour.lab(), colour.share(), colour.role(), colour.name()))
                .toList();
    }
}
