package tenterbook.piece.condition;

import tenterbook.measure.Digest;
import tenterbook.words.Refusal;

/**
 * A photograph that belongs to an examination.
 *
 * @param photo digest of the original file
 * @param caption what is to be seen, also for someone who cannot see it
 */
public record ExaminedPhoto(Digest photo, PhotoView view, String caption) {
    public ExaminedPhoto {
        if (photo == null) {
            throw Refusal.of("condition.photograph-missing");
        }
        view = view == null ? PhotoView.OTHER : view;
        caption = caption == null ? "" : caption.strip();
    }
}
