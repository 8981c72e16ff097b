package tenterbook.exchange;

import java.util.List;
import tenterbook.ledger.Finding;

/** No bag was made, and nothing stands under the name it would have had. */
public final class PackRefused extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final transient List<Finding> findings;

    PackRefused(List<Finding> findings, String next) {
        super("No bag was packed. %s %s Nothing was changed.".formatted(Sentences.of(findings), next));
        this.findings = List.copyOf(findings);
    }

    PackRefused(String where, String what) {
        this(List.of(new Finding(where, what)), "");
    }

    /** Everything that stood in the way. */
    public List<Finding> findings() {
        return findings;
    }
}
