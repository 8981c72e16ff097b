package tenterbook.colour.target;

import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** A card or chart that cannot correct the photograph; the message is for the person who marked it. */
public final class CardRefused extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;

    private final transient Written explanation;

    CardRefused(Message explanation) {
        super(explanation.inEnglish());
        this.explanation = explanation;
    }

    @Override
    public Written explanation() {
        return explanation == null ? conventions -> getMessage() : explanation;
    }
}
