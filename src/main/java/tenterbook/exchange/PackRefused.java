package tenterbook.exchange;

import java.util.List;
import tenterbook.ledger.file.Finding;
import tenterbook.words.Explained;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** No bag was made, and nothing stands under the name it would have had. */
public final class PackRefused extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;
    private final transient Written explanation;
    private final transient List<Finding> findings;

    public PackRefused(List<Finding> findings, Written next) {
        this(Message.of("exchange.pack.refused", "findings", Sentences.followed(findings, next)), findings);
    }

    private PackRefused(Written explanation, List<Finding> findings) {
        super(explanation.inEnglish());
        this.explanation = explanation;
        this.findings = List.copyOf(findings);
    }

    public PackRefused(String where, Written what) {
        this(List.of(new Finding(where, what)), Joined.NOTHING);
    }

    @Override
    public Written explanation() {
        return explanation;
    }

    /** All reasons. */
    public List<Finding> findings() {
        return findings;
    }
}
