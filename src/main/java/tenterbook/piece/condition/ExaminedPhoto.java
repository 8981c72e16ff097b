package tenterbook.piece.condition;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;
import tenterbook.words.Refusal;

/**
 * A photograph that belongs to an examination.
 *
 * @param photo digest of the original file
 * @param view null where nobody recorded what it shows
 * @param caption what is to be seen, also for someone who cannot see it
 */
public record ExaminedPhoto(Digest photo, @Nullable PhotoView view, String caption) {
    public ExaminedPhoto {
        if (photo == null) {
            throw Refusal.of("condition.photograph-missing");
        }
        caption = caption == null ? "" : caption.strip();
    }

    /** What it shows, as in 'front'; 'photograph' where nobody recorded that. */
    public String shows() {
        return view == null ? "photograph" : view.toString();
    }
}
