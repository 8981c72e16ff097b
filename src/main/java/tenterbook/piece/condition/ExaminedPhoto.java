package tenterbook.piece.condition;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * A photograph that belongs to an examination.
 *
 * @param photo digest of the original file
 * @param view null where not recorded
 * @param caption what it shows; also the text alternative
 */
public record ExaminedPhoto(Digest photo, @Nullable PhotoView view, String caption) {
    public ExaminedPhoto {
        if (photo == null) {
            throw Refusal.of("condition.photograph-missing");
        }
        caption = caption == null ? "" : caption.strip();
    }

    /** What it shows, as in 'front'; 'photograph' where not recorded. */
    public String shows() {
        return (view == null ? Message.of("form.photograph") : view).onPaper();
    }
}
