package tenterbook.label.document;

import tenterbook.archive.IssuedPaper;

/** A paper that is not sent any more, because what it said of a person was erased. */
public final class PaperErased extends RuntimeException {
    private static final long serialVersionUID = 1L;

    PaperErased(IssuedPaper paper) {
        super(
                "The paper %s is not sent any more: what it said of a person was erased on request, and its PDF with it. What else it said stands on its page."
                        .formatted(paper.id()));
    }
}
