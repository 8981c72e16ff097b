package tenterbook.exchange.bag;

import java.util.ArrayList;
import java.util.List;
import tenterbook.ledger.file.Finding;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** What was found wrong; beyond a readable number only counted. */
final class Findings {
    private static final int MOST = 1000;
    private final List<Finding> found = new ArrayList<>();
    private int more;

    void add(String file, Message what) {
        add(Joined.with("", BagPath.shown(file)), what);
    }

    void add(Written where, Message what) {
        if (found.size() < MOST) {
            found.add(new Finding(where, what));
        } else {
            more++;
        }
    }

    List<Finding> all() {
        List<Finding> all = new ArrayList<>(found);
        if (more > 0) {
            all.add(new Finding(Message.of("bag.the-bag"), Message.of("bag.more-findings", "count", more)));
        }
        return List.copyOf(all);
    }
}
