package tenterbook.piece.condition;

import tenterbook.words.Refusal;

/**
 * A part of the piece and how far it was looked at.
 *
 * @param zone as in 'front' or 'hanging device'; see {@link ConditionWords#zones}
 * @param note as in 'behind glass'
 */
public record ZoneSeen(String zone, Seen seen, String note) {
    public ZoneSeen {
        zone = zone == null ? "" : zone.strip();
        seen = seen == null ? Seen.NOT_SAID : seen;
        note = note == null ? "" : note.strip();
        if (zone.isEmpty()) {
            throw Refusal.of("condition.zone-unnamed");
        }
    }
}
