package tenterbook.web.page;

import org.jspecify.annotations.Nullable;
import tenterbook.ledger.revision.Kind;
import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The archive has no such record or page. */
public final class NotFound extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;

    private final transient Written explanation;

    /** @param what is missing, in a sentence */
    public NotFound(Message what) {
        super(explained(what).inEnglish());
        this.explanation = explained(what);
    }

    private static Message explained(Message what) {
        return Message.of("not-here.explained", "what", what);
    }

    /** No record of a kind has this identifier; null where a request named none. */
    public static NotFound of(Kind<?> kind, @Nullable Object id) {
        return new NotFound(Message.of("not-here." + kind.name(), "id", id == null ? "" : id));
    }

    @Override
    public Written explanation() {
        return explanation;
    }
}
