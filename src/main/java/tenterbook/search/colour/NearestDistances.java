package tenterbook.search.colour;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * The documents nearest so far, so that those surely farther need not be compared. Of equally far ones all are kept: numbers
 * decide. Safe for many threads.
 */
public final class NearestDistances {
    /** @param doc of the whole index */
    public record Near(double distance, int doc) {}

    private final int wanted;
    /** Least distance offered of each document that was among the wanted. */
    private final Map<Integer, Double> offered = new HashMap<>();

    private final TreeSet<Near> first =
            new TreeSet<>(Comparator.comparingDouble(Near::distance).thenComparingInt(Near::doc));
    private volatile double worst;

    /** @param limit none farther than this is wanted */
    public NearestDistances(int wanted, double limit) {
        this.wanted = wanted;
        this.worst = limit;
    }

    /** None farther than this is wanted. */
    public double worst() {
        return worst;
    }

    /** The square of {@link #worst}, with room for what rounding does to a bound. */
    double worst2() {
        return worst * worst + BoxBound.SLACK;
    }

    /** Takes a document's distance; where the same one is offered again, the lesser counts. */
    public synchronized void offer(int doc, double distance) {
        Double before = offered.get(doc);
        if (distance > worst || before != null && before <= distance) {
            return;
        }
        if (before != null) {
            first.remove(new Near(before, doc));
        }
        offered.put(doc, distance);
        first.add(new Near(distance, doc));
        if (first.size() > wanted) {
            first.pollLast();
        }
        if (first.size() == wanted) {
            worst = first.last().distance();
        }
    }

    /** The wanted ones and those as far as the last of them, unordered. */
    public synchronized List<Near> all() {
        return offered.entrySet().stream()
                .map(each -> new Near(each.getValue(), each.getKey()))
                .filter(near -> near.distance() <= worst)
                .toList();
    }
}
