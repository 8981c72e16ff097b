package tenterbook.web.photo;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.archive.ChartOfCamera;
import tenterbook.colour.palette.Region;
import tenterbook.colour.target.WhitePoint;
import tenterbook.imaging.Photo;
import tenterbook.imaging.PhotoCalibration;
import tenterbook.imaging.SeenCloth;
import tenterbook.piece.ColourRegion;
import tenterbook.piece.Piece;
import tenterbook.piece.PiecePhoto;
import tenterbook.web.colour.ColourBand;
import tenterbook.web.form.Form;

/**
 * A photograph of a piece with the outline of its cloth, its palette and the colours named on it.
 *
 * @param chart of the same camera, for a card in this photograph; null where there is none
 * @param corners of a card to draw; empty where none are typed or they are no numbers
 * @param white the white point of the values shown
 * @param typed what was typed for measuring and calibrating, with what is wrong about it
 */
public record PhotoPageView(
        Piece piece,
        int version,
        PiecePhoto shot,
        Photo photo,
        SeenCloth seen,
        ColourBand clothBand,
        ColourBand palette,
        List<Named> named,
        PhotoCalibration calibration,
        @Nullable ChartOfCamera chart,
        String corners,
        boolean proposed,
        List<Proposal> proposals,
        WhitePoint white,
        Form typed) {
    /** A colour area the picture suggests, with the part to measure it on as corners in percent. */
    public record Proposal(String role, ColourBand.Swatch swatch, double share, String outline, String drawn) {}

    /** Corners as SVG reads them, in parts of the picture. */
    static String points(List<Region.Corner> corners) {
        return corners.stream()
                .map(corner -> String.format(Locale.ROOT, "%.4f,%.4f", corner.x(), corner.y()))
                .collect(Collectors.joining(" "));
    }

    /** Of the outline of the cloth; empty without one. */
    public String clothPoints() {
        return points(seen.outline().corners());
    }

    /** The region's place in the list, and how it looks. */
    public record Named(int index, ColourRegion region, ColourBand.Swatch swatch, String corners) {}
}
