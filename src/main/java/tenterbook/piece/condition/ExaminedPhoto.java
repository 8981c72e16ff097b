package tenterbook.piece.condition;

import tenterbook.measure.Digest;

/**
 * A photograph that belongs to an examination.
 *
 * @param photo digest of the original file
 * @param caption what is to be seen, also for someone who cannot see it
 */
public record ExaminedPhoto(Digest photo, PhotoView view, String caption) {
    public ExaminedPhoto {
        if (photo == null) {
            throw new IllegalArgumentException("A photograph is named by the digest of its file; none was named.");
        }
        view = view == null ? PhotoView.OTHER : view;
        caption = caption == null ? "" : caption.strip();
    }
}
