package tenterbook.documents.issue;

import tenterbook.archive.record.IssuedPaper;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** A paper that is no longer available, because particulars of a person were erased from it. */
public final class PaperErased extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;

    private final transient Written explanation;

    PaperErased(IssuedPaper paper) {
        this(Message.of("document.refused.erased", "paper", paper.id()));
    }

    private PaperErased(Message explanation) {
        super(explanation.inEnglish());
        this.explanation = explanation;
    }

    @Override
    public Written explanation() {
        return explanation;
    }
}
