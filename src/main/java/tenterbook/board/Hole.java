package tenterbook.board;

import org.jspecify.annotations.Nullable;

/**
 * One hole through a board, for local colour.
 *
 * @param name what the maker calls it; unique in its state
 * @param acrossMm distance from the left edge of the upper board's outer face, in millimetres; null where not recorded
 * @param downMm distance from its top edge, in millimetres; null where not recorded
 * @param note which channel it opens into, or anything else
 */
public record Hole(
        String name, @Nullable Double acrossMm, @Nullable Double downMm, String note) {
    public Hole {
        name = name == null ? "" : name.strip();
        note = note == null ? "" : note.strip();
    }
}
