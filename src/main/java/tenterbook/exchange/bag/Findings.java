package tenterbook.exchange.bag;

import java.util.ArrayList;
import java.util.List;
import tenterbook.ledger.Finding;

/** What was found wrong, up to a number that a person could still read; beyond it only counted. */
final class Findings {
    private static final int MOST = 1000;
    private final List<Finding> found = new ArrayList<>();
    private int more;

    void add(String where, String what, Object... values) {
        if (found.size() < MOST) {
            found.add(new Finding(BagPath.shown(where), what.formatted(values)));
        } else {
            more++;
        }
    }

    List<Finding> all() {
        List<Finding> all = new ArrayList<>(found);
        if (more > 0) {
            all.add(new Finding("the bag", "%d more findings of the same kinds are not listed.".formatted(more)));
        }
        return List.copyOf(all);
    }
}
