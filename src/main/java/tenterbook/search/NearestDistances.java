package tenterbook.search;

import org.apache.lucene.util.PriorityQueue;

/**
 * The smallest distances seen, so that pieces surely farther than all the wanted ones need no exact distance. Safe for many
 * threads.
 */
final class NearestDistances implements NearestPalettes.Wanted {
    private final int wanted;
    private final PriorityQueue<Double> kept;
    private volatile double worst = Double.POSITIVE_INFINITY;

    NearestDistances(int wanted) {
        this.wanted = wanted;
        this.kept = new PriorityQueue<>(wanted) {
            @Override
            protected boolean lessThan(Double one, Double other) {
                return one > other;
            }
        };
    }

    /** The greatest of the wanted distances so far; infinite while there are fewer. */
    @Override
    public double worst() {
        return worst;
    }

    /** Remembers a distance; false where it is beyond all the wanted ones. An equal one is taken: numbers decide. */
    @Override
    public synchronized boolean takes(double distance) {
        if (distance > worst) {
            return false;
        }
        kept.insertWithOverflow(distance);
        if (kept.size() == wanted) {
            worst = kept.top();
        }
        return true;
    }
}
