package tenterbook.web.photo;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.imaging.Photo;
import tenterbook.measure.Threshold;

/**
 * Photographs taken one soon after another, which often show one piece.
 *
 * @param first index of the first in the list that they stand in
 * @param count 2 or more
 */
record TakenTogether(int first, int count) {
    /** Between two photographs that are taken to belong together. */
    private static final Duration APART = Duration.ofMinutes((long) Threshold.number("photographs-together"));

    /** @param photos in order of time; those without one belong to no group */
    static List<TakenTogether> among(List<Photo> photos) {
        List<TakenTogether> groups = new ArrayList<>();
        int first = 0;
        for (int i = 1; i <= photos.size(); i++) {
            if (i == photos.size() || !follows(time(photos.get(i - 1)), time(photos.get(i)))) {
                if (i - first > 1) {
                    groups.add(new TakenTogether(first, i - first));
                }
                first = i;
            }
        }
        return groups;
    }

    boolean has(int index) {
        return index >= first && index < first + count;
    }

    private static boolean follows(@Nullable LocalDateTime before, @Nullable LocalDateTime after) {
        return before != null
                && after != null
                && Duration.between(before, after).compareTo(APART) <= 0;
    }

    /** By the camera's clock; null where that is not known. */
    private static @Nullable LocalDateTime time(Photo photo) {
        try {
            return photo.taken().length() < 19
                    ? null
                    : LocalDateTime.parse(photo.taken().substring(0, 19));
        } catch (DateTimeParseException e) {
            return null;
        }
    }
}
