package tenterbook.imaging.file;

import tenterbook.words.Explained;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** A file that cannot be taken as a photograph; the message is for the person who added it. */
public final class PhotoRefused extends RuntimeException implements Explained {
    private static final long serialVersionUID = 1L;

    private final transient Written explanation;

    private PhotoRefused(Message explanation) {
        super(explanation.inEnglish());
        this.explanation = explanation;
    }

    /** @see Message#of */
    public static PhotoRefused of(String key, Object... namesAndValues) {
        return new PhotoRefused(Message.of(key, namesAndValues));
    }

    @Override
    public Written explanation() {
        return explanation == null ? conventions -> getMessage() : explanation;
    }
}
