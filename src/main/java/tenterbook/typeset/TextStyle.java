package tenterbook.typeset;

/**
 * How a text is set. All lengths in points.
 *
 * @param size of type
 * @param leading from baseline to baseline, at {@code size}
 * @param tracking added after every letter, in parts of the size
 * @param smallest to which the size may shrink; above 0 and at most {@code size}
 * @param balanced whether lines are made of even length, as for a title
 * @param hyphenated whether plain English words may be hyphenated; for running text alone, never for names or required words
 */
public record TextStyle(
        Typeface face,
        double size,
        double leading,
        double tracking,
        double smallest,
        boolean balanced,
        boolean hyphenated) {
    public TextStyle {
        if (!(smallest > 0 && smallest <= size && leading >= size * 0.8)) {
            throw new IllegalStateException(
                    "A style shrinks from its size to a smaller one, with leading of at least 0.8 of it; found %s to %s, leading %s"
                            .formatted(size, smallest, leading));
        }
    }

    public static TextStyle of(Typeface face, double size, double leading, double smallest) {
        return new TextStyle(face, size, leading, 0, smallest, false, false);
    }

    public TextStyle tracked(double parts) {
        return new TextStyle(face, size, leading, parts, smallest, balanced, hyphenated);
    }

    public TextStyle even() {
        return new TextStyle(face, size, leading, tracking, smallest, true, hyphenated);
    }

    public TextStyle running() {
        return new TextStyle(face, size, leading, tracking, smallest, balanced, true);
    }

    /** The style at a part of its size, yet never under its smallest. */
    TextStyle shrunk(double scale) {
        double to = Math.max(smallest, size * scale);
        return new TextStyle(face, to, leading * to / size, tracking, Math.min(smallest, to), balanced, hyphenated);
    }
}
