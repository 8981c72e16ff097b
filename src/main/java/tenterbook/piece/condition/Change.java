package tenterbook.piece.condition;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Message;
import tenterbook.words.Worded;
import tenterbook.words.Written;

/**
 * One thing in two examinations.
 *
 * @param before null where the earlier one had not seen it
 * @param after null where the later one says nothing of it
 * @param differs what is written otherwise, as in 'extent 12 mm, was 8 mm'
 * @param doubt where what was said and what was written do not go together; empty otherwise
 */
public record Change(
        int number,
        Kind kind,
        @Nullable Observation before,
        @Nullable Observation after,
        List<Written> differs,
        @Nullable Written doubt) {
    /** What became of a thing. */
    public enum Kind implements Worded {
        NEW("new"),
        WORSE("worse"),
        BETTER("better"),
        GONE("gone"),
        UNCHANGED("still there"),
        NOT_CHECKED("not checked");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        @Override
        public Message word() {
            return Message.of("condition.change." + word.replace(' ', '-'));
        }

        @Override
        public String toString() {
            return word;
        }
    }

    public Change {
        differs = List.copyOf(differs);
    }

    /** The thing as it was seen last. */
    public Observation last() {
        return after == null ? before : after;
    }
}
