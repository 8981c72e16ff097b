package tenterbook.piece.condition;

import org.jspecify.annotations.Nullable;
import tenterbook.words.Refusal;

/**
 * A part of the piece and how far it was examined.
 *
 * @param zone as in 'front' or 'hanging device'; see {@link ConditionWords#zones}
 * @param seen null where not recorded
 * @param note as in 'behind glass'
 */
public record ZoneSeen(String zone, @Nullable ExtentExamined seen, String note) {
    public ZoneSeen {
        zone = zone == null ? "" : zone.strip();
        note = note == null ? "" : note.strip();
        if (zone.isEmpty()) {
            throw Refusal.of("condition.zone-unnamed");
        }
    }
}
