package tenterbook.exchange;

import java.util.List;
import tenterbook.ledger.file.Finding;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** A bag was not restored, and nothing stands where the archive would have been. */
public final class BagRefused extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;
    private final transient Written explanation;
    private final transient List<Finding> findings;

    public BagRefused(List<Finding> findings) {
        this(Message.of("exchange.restore.refused", "findings", Sentences.of(findings)), findings);
    }

    private BagRefused(Written explanation, List<Finding> findings) {
        super(explanation.inEnglish());
        this.explanation = explanation;
        this.findings = List.copyOf(findings);
    }

    public BagRefused(String where, Written what) {
        this(List.of(new Finding(where, what)));
    }

    @Override
    public Written explanation() {
        return explanation;
    }

    /** All reasons, not only the first. */
    public List<Finding> findings() {
        return findings;
    }
}
