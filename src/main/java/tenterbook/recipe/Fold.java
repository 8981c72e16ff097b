package tenterbook.recipe;

/**
 * One fold of a scheme: the cloth as it then lies is folded to {@code panels} panels.
 *
 * @param axis which side of the cloth is made shorter
 * @param style how
 * @param panels number of panels, 2 to 64; a power of two for halving
 */
public record Fold(Axis axis, Style style, int panels) {
    /** Which side a fold makes shorter. */
    public enum Axis {
        LENGTH("length"),
        WIDTH("width");

        private final String word;

        Axis(String word) {
            this.word = word;
        }

        @Override
        public String toString() {
            return word;
        }
    }

    /** How the cloth is folded. */
    public enum Style {
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
        public String toString() {
            return word;
        }
    }

    public Fold {
        if (axis == null || style == null) {
            throw new IllegalArgumentException("A fold names the side it shortens and how it is folded");
        }
        if (panels < 2 || panels > 64) {
            throw new IllegalArgumentException("A fold makes 2 to 64 panels; found " + panels);
        }
        if (style == Style.HALVING && Integer.bitCount(panels) != 1) {
            throw new IllegalArgumentException("Halving makes 2, 4, 8, 16, 32 or 64 panels; found " + panels);
        }
    }
}
