package tenterbook.search;

import org.apache.lucene.util.PriorityQueue;

/** The smallest distances seen, so that pieces surely farther than all the wanted ones need no exact distance. */
final class NearestDistances {
    private final int wanted;
    private final PriorityQueue<Double> kept;

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
    double worst() {
        return kept.size() < wanted ? Double.POSITIVE_INFINITY : kept.top();
    }

    /** Remembers a distance; false where it is beyond all the wanted ones. An equal one is taken: numbers decide. */
    boolean takes(double distance) {
        if (kept.size() == wanted && distance > kept.top()) {
            return false;
        }
        kept.insertWithOverflow(distance);
        return true;
    }
}
