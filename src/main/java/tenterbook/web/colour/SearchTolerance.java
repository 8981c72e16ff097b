package tenterbook.web.colour;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Threshold;
import tenterbook.search.query.PieceQuery;

/** How far from a colour that was read from a picture pieces are looked for. */
public final class SearchTolerance {
    /**
     * ΔE00 for a colour of a picture without a grey card. The usual tolerance holds for colours in one light; a calibration by the
     * card moved nine of ten cloth colours of the sample's 69 photographs by 4.9 or less (half of them by 3.0, the most by 7.7),
     * and so much is added. All colours of one picture are off the same way, so it is a sum and not a root of squares. The
     * photographs are rendered; those of others were not tried.
     */
    public static final double UNCALIBRATED = PieceQuery.USUAL_WITHIN + Threshold.number("search-uncalibrated");

    private SearchTolerance() {}

    /** @param likelyError of the picture's calibration; null without one */
    public static double of(@Nullable Double likelyError) {
        return likelyError == null ? UNCALIBRATED : PieceQuery.USUAL_WITHIN;
    }
}
