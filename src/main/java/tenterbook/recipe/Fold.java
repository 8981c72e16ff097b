package tenterbook.recipe;

import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Worded;

/**
 * One fold of a scheme: the cloth as it then lies is folded to {@code panels} panels.
 *
 * @param axis which side of the cloth is made shorter
 * @param style how
 * @param panels number of panels, 2 to 64; a power of two for halving
 */
public record Fold(Axis axis, Style style, int panels) {
    /** Which side a fold makes shorter. */
    public enum Axis implements Worded {
        LENGTH("length"),
        WIDTH("width");

        private final String word;

        Axis(String word) {
            this.word = word;
        }

        @Override
        public Message word() {
            return Message.of("recipe.axis." + word.replace(' ', '-'));
        }

        @Override
        public String toString() {
            return word;
        }
    }

    /** How the cloth is folded. */
    public enum Style implements Worded {
        /** To and fro, like a screen. */
        ACCORDION("accordion"),
        /** In half, and in half again. */
        HALVING("halving"),
        /** Over and over in one direction. */
        ROLLED("rolled flat");

        private final String word;

        Style(String word) {
            this.word = word;
        }

        @Override
        public Message word() {
            return Message.of("recipe.style." + word.replace(' ', '-'));
        }

        @Override
        public String toString() {
            return word;
        }
    }

    public Fold {
        if (axis == null || style == null) {
            throw Refusal.of("recipe.fold-incomplete");
        }
        if (panels < 2 || panels > 64) {
            throw Refusal.of("recipe.panels", "found", panels);
        }
        if (style == Style.HALVING && Integer.bitCount(panels) != 1) {
            throw Refusal.of("recipe.panels-halving", "found", panels);
        }
    }
}
