package tenterbook.colour.target;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tenterbook.colour.palette.Pixels;
import tenterbook.colour.space.LinearRgb;

/** Refines roughly known sides of a card to the steepest change of light, to within a pixel. */
final class CardEdges {
    private static final int PLACES = 24;

    private CardEdges() {}

    /**
     * @param quad four corners in pixels
     * @param reach greatest distance of a side from its assumed place, pixels
     * @return the corners moved; a side without a clear edge stays
     */
    static double[][] refine(Pixels picture, double[][] quad, double reach) {
        double[][][] lines = new double[4][][];
        for (int i = 0; i < 4; i++) {
            lines[i] = line(picture, quad[i], quad[(i + 1) % 4], reach);
        }
        double[][] out = new double[4][];
        for (int i = 0; i < 4; i++) {
            double[][] before = lines[(i + 3) % 4];
            double[] corner = QuadFit.meeting(before[0], before[1], lines[i][0], lines[i][1]);
            boolean near = corner != null && Math.hypot(corner[0] - quad[i][0], corner[1] - quad[i][1]) < 3 * reach;
            out[i] = near ? corner : quad[i];
        }
        return out;
    }

    private static double[][] line(Pixels picture, double[] from, double[] to, double reach) {
        double length = Math.hypot(to[0] - from[0], to[1] - from[1]);
        double nx = (to[1] - from[1]) / length;
        double ny = -(to[0] - from[0]) / length;
        List<double[]> edges = new ArrayList<>();
        for (int i = 0; i < PLACES; i++) {
            double t = 0.12 + 0.76 * i / (PLACES - 1);
            double x = from[0] + t * (to[0] - from[0]);
            double y = from[1] + t * (to[1] - from[1]);
            double best = 0;
            double most = 0;
            for (double d = -reach; d <= reach; d += 0.5) {
                double change =
                        difference(picture, x + (d - 1) * nx, y + (d - 1) * ny, x + (d + 1) * nx, y + (d + 1) * ny);
                if (change > most) {
                    most = change;
                    best = d;
                }
            }
            edges.add(new double[] {t, best, most});
        }
        double[] fit = robust(edges);
        return new double[][] {
            {from[0] + fit[0] * nx, from[1] + fit[0] * ny}, {to[0] + fit[1] * nx, to[1] + fit[1] * ny}
        };
    }

    /** Offsets at both ends: the median of slopes and of offsets (Theil 1950, Sen 1968). */
    private static double[] robust(List<double[]> edges) {
        List<Double> slopes = new ArrayList<>();
        for (int i = 0; i < edges.size(); i++) {
            for (int j = i + 1; j < edges.size(); j++) {
                slopes.add((edges.get(j)[1] - edges.get(i)[1]) / (edges.get(j)[0] - edges.get(i)[0]));
            }
        }
        double slope = median(slopes);
        double at0 = median(edges.stream().map(e -> e[1] - slope * e[0]).toList());
        return new double[] {at0, at0 + slope};
    }

    private static double median(List<Double> values) {
        return values.stream().sorted(Comparator.naturalOrder()).toList().get(values.size() / 2);
    }

    private static double difference(Pixels picture, double x0, double y0, double x1, double y1) {
        LinearRgb a = at(picture, x0, y0);
        LinearRgb b = at(picture, x1, y1);
        return Math.abs(Math.sqrt(a.red()) - Math.sqrt(b.red()))
                + Math.abs(Math.sqrt(a.green()) - Math.sqrt(b.green()))
                + Math.abs(Math.sqrt(a.blue()) - Math.sqrt(b.blue()));
    }

    private static LinearRgb at(Pixels picture, double x, double y) {
        int column = (int) Math.max(0, Math.min(picture.width() - 1, Math.floor(x)));
        int row = (int) Math.max(0, Math.min(picture.height() - 1, Math.floor(y)));
        return picture.linear(column, row);
    }
}
