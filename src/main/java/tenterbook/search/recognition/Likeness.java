package tenterbook.search.recognition;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.search.recognition.Recognition.Evidence;
import tenterbook.search.recognition.Recognition.Place;

/**
 * How alike a picture and a photograph are: the places found in both, of those that could have been found. A plain number of
 * places would prefer the piece that was photographed larger.
 */
final class Likeness {
    /** The smallest radius that is found at all, in parts of a side of 1,024 pixels. */
    private static final double LEAST_RADIUS = 3.2 / 1024;

    /** Added to the places that could have been found, so that a few found of a few do not weigh as much as many of many. */
    private static final double FEW = 20;

    /**
     * By so many pixels, of 1,024, the places may lie off on the whole, and beside their neighbours, until their share counts a
     * third. Panels of another piece made on the same boards are shifted a little, and their edges are others; a cloth that
     * hangs in folds is off as well, but evenly. Of 32 photographs of twins (tuning set) the share alone put 25 to the right
     * piece, and this 31.
     */
    private static final double PIXELS_OFF = 8;

    private static final double PIXELS_UNEVEN = 3;

    final boolean mirrored;
    private final PhotoFeatures query;
    private final PhotoFeatures photo;
    private final Matches matches;
    private final Placement placement;
    final int visible;
    final double share;
    final double score;

    private Likeness(Matches.Side query, Matches.Side photo, Matches matches, boolean mirrored, Placement placement) {
        this.query = query.features;
        this.photo = photo.features;
        this.matches = matches;
        this.mirrored = mirrored;
        this.placement = placement;
        double scale = Math.sqrt(placement.homography.area(this.query.width / 2, this.query.height / 2));
        this.visible = Math.min(
                visible(this.query, this.photo, placement.homography, scale),
                visible(this.photo, this.query, placement.homography.inverse(), 1 / scale));
        this.share = placement.inliers.length / (visible + FEW);
        this.score = share
                * Math.exp(-1024 * placement.residual / PIXELS_OFF - 1024 * placement.unevenness() / PIXELS_UNEVEN);
    }

    /** @param mirrored whether {@code query} is of the picture's mirror image */
    static @Nullable Likeness of(Matches.Side query, Matches.Side photo, boolean mirrored) {
        Matches matches = Matches.between(query, photo);
        Placement placement = Placement.of(query.features, photo.features, matches);
        return placement == null ? null : new Likeness(query, photo, matches, mirrored, placement);
    }

    /** The one with the higher score; this one where both are equal. */
    Likeness better(Likeness other) {
        return other.score > score ? other : this;
    }

    int count() {
        return placement.inliers.length;
    }

    double residual() {
        return placement.residual;
    }

    /** Places of one picture that lie in the other and are not too small to be found there. */
    private static int visible(PhotoFeatures from, PhotoFeatures to, Homography homography, double scale) {
        int visible = 0;
        for (int i = 0; i < from.count; i++) {
            double x = homography.x(from.x[i], from.y[i]);
            double y = homography.y(from.x[i], from.y[i]);
            boolean within = x >= 0 && y >= 0 && x <= to.width && y <= to.height;
            visible += within && from.radius[i] * scale >= LEAST_RADIUS ? 1 : 0;
        }
        return visible;
    }

    /** @param longerSideMm as in {@link Shown} */
    Evidence evidence(@Nullable Double longerSideMm) {
        List<Place> places = new ArrayList<>();
        for (int inlier : placement.inliers) {
            int q = matches.query[inlier];
            int p = matches.photo[inlier];
            double x = mirrored ? query.width - query.x[q] : query.x[q];
            places.add(new Place(
                    x / query.width, query.y[q] / query.height, photo.x[p] / photo.width, photo.y[p] / photo.height));
        }
        Homography toLength = new Homography(
                mirrored ? -query.width : query.width, 0, mirrored ? query.width : 0, 0, query.height, 0, 0, 0, 1);
        Homography toParts = new Homography(1 / photo.width, 0, 0, 0, 1 / photo.height, 0, 0, 0, 1);
        return new Evidence(
                mirrored,
                toLength.then(placement.homography).then(toParts),
                places,
                visible,
                share,
                score,
                1024 * placement.residual,
                longerSideMm == null ? null : longerSideMm * placement.residual);
    }
}
