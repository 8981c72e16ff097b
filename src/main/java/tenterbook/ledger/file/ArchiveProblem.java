package tenterbook.ledger.file;

import org.jspecify.annotations.Nullable;
import tenterbook.words.Explained;
import tenterbook.words.Joined;
import tenterbook.words.Written;

/** The archive cannot be opened or written; the message says what to do. */
public class ArchiveProblem extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;

    private final transient Written explanation;

    public ArchiveProblem(Written explanation) {
        this(explanation, null);
    }

    public ArchiveProblem(Written explanation, @Nullable Throwable cause) {
        super(explanation.inEnglish(), cause);
        this.explanation = explanation;
    }

    public ArchiveProblem(String message) {
        this(message, null);
    }

    public ArchiveProblem(String message, @Nullable Throwable cause) {
        this(Joined.with("", message), cause);
    }

    @Override
    public Written explanation() {
        return explanation;
    }
}
