package tenterbook.piece.condition;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.words.Message;
import tenterbook.words.Worded;
import tenterbook.words.Written;

/**
 * One observation in two examinations.
 *
 * @param before null where the earlier one had not seen it
 * @param after null where the later one does not list it
 * @param differs fields that changed, as in 'extent 12 mm, was 8 mm'
 * @param doubt a contradiction between the examiner's judgement and the recorded sizes; null for none
 */
public record Change(
        int number,
        Kind kind,
        @Nullable Observation before,
        @Nullable Observation after,
        List<Written> differs,
        @Nullable Written doubt) {
    /** How an observation changed. */
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

    /** The later observation where there is one, else the earlier. */
    public Observation last() {
        return after == null ? before : after;
    }
}
