package tenterbook.search.recognition;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * How the cloth of one picture lies in another, from places that look alike. Every match gives a turn, a size and a shift by
 * itself; the one that most others agree with is refined by least squares, first to a parallel projection, then to a perspective
 * one. All are tried in order, so the same matches always give the same.
 */
final class Placement {
    /** How far a match may lie from where it should, in parts of the photograph's longer side: at first, and at the end. */
    private static final double LOOSE = 0.02;

    private static final double TIGHT = 0.008;
    /** So far may a single place be off in size (factor) and in turn (radians). */
    private static final double SIZE = Math.log(1.6);

    private static final double TURN = Math.toRadians(25);
    /** Sizes further apart than this are not compared. */
    private static final double FARTHEST = Math.log(8);

    /** A perspective stronger than this does not come of a cloth photographed by a person. */
    private static final double MOST_PERSPECTIVE = 0.35;

    private static final double MOST_SHEAR = 2;
    private static final int FEWEST_FOR_PERSPECTIVE = 16;
    static final int FEWEST = 5;
    private static final int NEIGHBOURS = 6;

    final Homography homography;
    /** Which of the matches agree. */
    final int[] inliers;
    /** Root mean square distance, in parts of the photograph's longer side. */
    final double residual;

    private final Pairs pairs;

    private Placement(Pairs pairs, Homography homography, int[] inliers, double residual) {
        this.pairs = pairs;
        this.homography = homography;
        this.inliers = inliers;
        this.residual = residual;
    }

    private record Pairs(PhotoFeatures from, PhotoFeatures to, Matches matches) {
        double grown(int match) {
            return Math.log(to.radius[matches.photo[match]] / from.radius[matches.query[match]]);
        }

        double turned(int match) {
            return within(to.angle[matches.photo[match]] - from.angle[matches.query[match]]);
        }

        double x(int match) {
            return from.x[matches.query[match]];
        }

        double y(int match) {
            return from.y[matches.query[match]];
        }

        double toX(int match) {
            return to.x[matches.photo[match]];
        }

        double toY(int match) {
            return to.y[matches.photo[match]];
        }

        double off(Homography homography, int match) {
            return Math.hypot(
                    homography.x(x(match), y(match)) - toX(match), homography.y(x(match), y(match)) - toY(match));
        }

        private static double within(double angle) {
            return angle - 2 * Math.PI * Math.rint(angle / (2 * Math.PI));
        }
    }

    /** Null where no placement has {@link #FEWEST} matches, or none that a flat cloth could have. */
    static @Nullable Placement of(PhotoFeatures query, PhotoFeatures photo, Matches matches) {
        Pairs pairs = new Pairs(query, photo, matches);
        int best = -1;
        int most = FEWEST - 1;
        for (int i = 0; i < matches.count; i++) {
            int agreeing = agreeing(pairs, i).length;
            if (agreeing > most) {
                most = agreeing;
                best = i;
            }
        }
        return best < 0 ? null : refined(pairs, agreeing(pairs, best));
    }

    /**
     * How far each place is off beside the mean of its nearest neighbours, root mean square, in parts of the photograph's longer
     * side: a cloth that hangs in folds is off, but evenly.
     */
    double unevenness() {
        int count = inliers.length;
        double[] right = new double[count];
        double[] down = new double[count];
        for (int i = 0; i < count; i++) {
            int match = inliers[i];
            right[i] = homography.x(pairs.x(match), pairs.y(match)) - pairs.toX(match);
            down[i] = homography.y(pairs.x(match), pairs.y(match)) - pairs.toY(match);
        }
        double sum = 0;
        for (int i = 0; i < count; i++) {
            double meanRight = 0;
            double meanDown = 0;
            int[] near = neighbours(i);
            for (int other : near) {
                meanRight += right[other] / near.length;
                meanDown += down[other] / near.length;
            }
            sum += Math.pow(right[i] - meanRight, 2) + Math.pow(down[i] - meanDown, 2);
        }
        return Math.sqrt(sum / count);
    }

    private int[] neighbours(int inlier) {
        int[] nearest = new int[Math.min(NEIGHBOURS, inliers.length - 1)];
        double[] apart = new double[nearest.length];
        Arrays.fill(apart, Double.MAX_VALUE);
        for (int other = 0; other < inliers.length; other++) {
            if (other == inlier) {
                continue;
            }
            double across = pairs.toX(inliers[other]) - pairs.toX(inliers[inlier]);
            double along = pairs.toY(inliers[other]) - pairs.toY(inliers[inlier]);
            double distance = across * across + along * along;
            int at = nearest.length;
            while (at > 0 && distance < apart[at - 1]) {
                at--;
                if (at + 1 < nearest.length) {
                    apart[at + 1] = apart[at];
                    nearest[at + 1] = nearest[at];
                }
            }
            if (at < nearest.length) {
                apart[at] = distance;
                nearest[at] = other;
            }
        }
        return nearest;
    }

    private static int[] agreeing(Pairs pairs, int match) {
        double grown = pairs.grown(match);
        double turned = pairs.turned(match);
        if (Math.abs(grown) > FARTHEST) {
            return new int[0];
        }
        double cos = Math.exp(grown) * Math.cos(turned);
        double sin = Math.exp(grown) * Math.sin(turned);
        double right = pairs.toX(match) - cos * pairs.x(match) + sin * pairs.y(match);
        double down = pairs.toY(match) - sin * pairs.x(match) - cos * pairs.y(match);
        int[] found = new int[pairs.matches.count];
        int count = 0;
        for (int i = 0; i < found.length; i++) {
            double offX = cos * pairs.x(i) - sin * pairs.y(i) + right - pairs.toX(i);
            double offY = sin * pairs.x(i) + cos * pairs.y(i) + down - pairs.toY(i);
            if (offX * offX + offY * offY < 4 * LOOSE * LOOSE
                    && Math.abs(pairs.grown(i) - grown) < SIZE
                    && Math.abs(Pairs.within(pairs.turned(i) - turned)) < TURN) {
                found[count++] = i;
            }
        }
        return Arrays.copyOf(found, count);
    }

    private static @Nullable Placement refined(Pairs pairs, int[] start) {
        int[] inliers = start;
        Homography fitted = null;
        for (double near : new double[] {LOOSE, LOOSE, TIGHT, TIGHT, TIGHT}) {
            if (inliers.length < FEWEST) {
                return null;
            }
            fitted = LeastSquares.fit(
                    inliers.length,
                    index(inliers, pairs, 0),
                    index(inliers, pairs, 1),
                    index(inliers, pairs, 2),
                    index(inliers, pairs, 3),
                    inliers.length >= FEWEST_FOR_PERSPECTIVE && near == TIGHT);
            if (fitted == null || !ofFlatCloth(fitted, pairs.from)) {
                return null;
            }
            inliers = near(pairs, fitted, near);
        }
        double sum = 0;
        for (int match : inliers) {
            sum += Math.pow(pairs.off(fitted, match), 2);
        }
        return inliers.length < FEWEST ? null : new Placement(pairs, fitted, inliers, Math.sqrt(sum / inliers.length));
    }

    private static double[] index(int[] matches, Pairs pairs, int what) {
        double[] values = new double[matches.length];
        for (int i = 0; i < values.length; i++) {
            int match = matches[i];
            values[i] = switch (what) {
                case 0 -> pairs.x(match);
                case 1 -> pairs.y(match);
                case 2 -> pairs.toX(match);
                default -> pairs.toY(match);
            };
        }
        return values;
    }

    private static int[] near(Pairs pairs, Homography fitted, double near) {
        double middle = Math.log(fitted.area(pairs.from.width / 2, pairs.from.height / 2)) / 2;
        int[] found = new int[pairs.matches.count];
        int count = 0;
        for (int i = 0; i < found.length; i++) {
            if (pairs.off(fitted, i) < near && Math.abs(pairs.grown(i) - middle) < 1.5 * SIZE) {
                found[count++] = i;
            }
        }
        return Arrays.copyOf(found, count);
    }

    /** Neither turned over nor drawn out more than a camera held by a person would. */
    private static boolean ofFlatCloth(Homography fitted, PhotoFeatures from) {
        double[] h = fitted.h();
        double least = Double.MAX_VALUE;
        double most = 0;
        for (int corner = 0; corner < 4; corner++) {
            double x = corner % 2 * from.width;
            double y = corner / 2 * from.height;
            if (h[6] * x + h[7] * y + 1 <= 0) {
                return false;
            }
            double area = fitted.area(x, y);
            least = Math.min(least, area);
            most = Math.max(most, area);
        }
        double squares = h[0] * h[0] + h[1] * h[1] + h[3] * h[3] + h[4] * h[4];
        double area = h[0] * h[4] - h[1] * h[3];
        return least > 0
                && area > 0
                && Math.log(most / least) < 3 * MOST_PERSPECTIVE * 2
                && squares / (2 * area) < MOST_SHEAR * 0.75;
    }
}
