package tenterbook.sample;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Distances over one board face, in mm, worked out once for each board state. */
final class BoardFields {
    static final double PIXELS_PER_MM = 3;
    private static final Map<String, BoardFields> KNOWN = new ConcurrentHashMap<>();

    final Motif motif;
    private final Field land;
    private final Field cell;
    private final Field open;
    private final int[] nearestHole;
    private final int holeColumns;

    private BoardFields(Motif motif) {
        this.motif = motif;
        Field lands = motif.lands(PIXELS_PER_MM);
        this.land = lands.signedDistance();
        this.cell = motif.cells(PIXELS_PER_MM).signedDistance();
        this.open = lands.blurred(4 * PIXELS_PER_MM);
        this.holeColumns = (int) Math.ceil(motif.widthMm());
        int rows = (int) Math.ceil(motif.heightMm());
        this.nearestHole = new int[holeColumns * rows];
        for (int i = 0; i < nearestHole.length; i++) {
            nearestHole[i] = nearest(i % holeColumns + 0.5, i / holeColumns + 0.5);
        }
    }

    static BoardFields of(String boardState) {
        return KNOWN.computeIfAbsent(boardState, name -> new BoardFields(Motifs.of(name)));
    }

    /** mm to the nearest land edge: positive in the channels, negative under a land. */
    double channelDepth(double x, double y) {
        return land.sample(x * PIXELS_PER_MM, y * PIXELS_PER_MM) / PIXELS_PER_MM;
    }

    /** mm to the nearest cell edge: positive inside the cell. */
    double cellDepth(double x, double y) {
        return -cell.sample(x * PIXELS_PER_MM, y * PIXELS_PER_MM) / PIXELS_PER_MM;
    }

    /** Share of channel around a place, 0 to 1: how freely the bath comes by. */
    double openness(double x, double y) {
        return 1 - open.sample(x * PIXELS_PER_MM, y * PIXELS_PER_MM);
    }

    /** Index of the nearest hole, from 0. */
    int hole(double x, double y) {
        int column = Math.max(0, Math.min(holeColumns - 1, (int) x));
        int row = Math.max(0, Math.min(nearestHole.length / holeColumns - 1, (int) y));
        return nearestHole[row * holeColumns + column];
    }

    private int nearest(double x, double y) {
        int best = 0;
        double least = Double.MAX_VALUE;
        for (int i = 0; i < motif.holes().size(); i++) {
            Motif.Hole h = motif.holes().get(i);
            double d = Math.hypot(h.x() - x, h.y() - y);
            if (d < least) {
                least = d;
                best = i;
            }
        }
        return best;
    }
}
