package tenterbook.colour.palette;

import java.util.Locale;
import java.util.Objects;
import tenterbook.colour.space.Lab;
import tenterbook.measure.NumberWords;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Worded;

/**
 * A colour area of a cloth, proposed from the picture alone; a person may mark another part instead.
 *
 * @param part what it looks like
 * @param share of the cloth, above 0 to 1
 * @param mean CIELAB, D65, 2°, of the picture: uncalibrated, for telling the areas apart; measure {@code sample} for a number
 * @param sample a rectangle that lies within the area, the largest there is: where to measure
 */
public record ClothArea(Part part, double share, Lab mean, Region sample) {
    /** Told by share and lightness only. */
    public enum Part implements Worded {
        /** The largest area. */
        GROUND("ground"),
        /** The lightest, if it is clearly lighter than the ground. */
        RESIST("resist"),
        /** A colour that is neither, nor a shade between the two. */
        LOCAL("local colour");

        private final String words;

        Part(String words) {
            this.words = words;
        }

        @Override
        public Message word() {
            return Message.of("colour.part." + name().toLowerCase(Locale.ROOT));
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** @throws IllegalArgumentException if the share is not above 0 and at most 1 */
    public ClothArea {
        Objects.requireNonNull(part, "part");
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(sample, "sample");
        if (!(share > 0 && share <= 1 + 1e-9)) {
            throw Refusal.of("colour.area-share", "found", NumberWords.plain(share));
        }
    }
}
