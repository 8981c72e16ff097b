package tenterbook.piece;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.colour.space.Lab;
import tenterbook.measure.NumberWords;
import tenterbook.words.Refusal;

/**
 * A colour that a person named on a photograph, with the part of the picture it was read from.
 *
 * @param role ground, resist or local colour
 * @param name the maker's own name for it; may be empty
 * @param colour mean colour over the region, CIELAB, D65, 2° observer
 * @param share of the piece's area, 0 to 1; null where not measured
 * @param corners the region's corners as fractions of the upright picture's width and height; empty where the colour was taken
 *     from the palette or typed
 * @param calibrated whether the photograph was calibrated when it was read
 * @param spread half of the pixels lie within this ΔE00 of the mean; null where not measured
 * @param pixels how many were measured; null where not measured
 * @param likelyError typical ΔE00 from what an instrument would give; null unless calibrated
 */
public record ColourRegion(
        ColourRole role,
        String name,
        Lab colour,
        @Nullable Double share,
        List<Corner> corners,
        boolean calibrated,
        @Nullable Double spread,
        @Nullable Integer pixels,
        @Nullable Double likelyError) {
    /** A corner, as fractions of the picture's width and height, each 0 to 1 from the upper left. */
    public record Corner(double across, double down) {}

    /** A colour without measurements of spread and error. */
    public ColourRegion(
            ColourRole role, String name, Lab colour, Double share, List<Corner> corners, boolean calibrated) {
        this(role, name, colour, share, corners, calibrated, null, null, null);
    }

    public ColourRegion {
        if (role == null) {
            throw Refusal.of("piece.colour-without-role");
        }
        name = name == null ? "" : name.strip();
        if (colour == null) {
            throw Refusal.of("piece.colour-missing");
        }
        corners = corners == null ? List.of() : List.copyOf(corners);
        if (share != null && !(share >= 0 && share <= 1)) {
            throw Refusal.of("piece.share-range", "found", NumberWords.plain(share));
        }
    }
}
