package tenterbook.piece.condition;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.PartialDate;
import tenterbook.piece.PartyId;

/**
 * Who hands a piece over or receives it.
 *
 * @param party from the archive's people, or null
 * @param name of the person who signs
 */
public record Signatory(@Nullable PartyId party, String name, PartialDate when) {
    public static final Signatory NOBODY = new Signatory(null, "", PartialDate.UNRECORDED);

    public Signatory {
        name = name == null ? "" : name.strip();
        when = when == null ? PartialDate.UNRECORDED : when;
    }

    public boolean named() {
        return party != null || !name.isEmpty() || when.recorded();
    }
}
