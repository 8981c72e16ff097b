package tenterbook.exchange;

import java.util.List;
import tenterbook.ledger.Finding;

/** A bag was not restored, and nothing stands where the archive would have been. */
public final class BagRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient List<Finding> findings;

    BagRefused(List<Finding> findings) {
        super(
                "The bag was not restored: %s Nothing was changed; the bag and the place for the archive are as they were."
                        .formatted(Sentences.of(findings)));
        this.findings = List.copyOf(findings);
    }

    BagRefused(String where, String what) {
        this(List.of(new Finding(where, what)));
    }

    /** Everything that stood in the way, not only the first. */
    public List<Finding> findings() {
        return findings;
    }
}
