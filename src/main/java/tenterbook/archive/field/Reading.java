package tenterbook.archive.field;

import java.util.Currency;
import tenterbook.measure.LengthUnits;
import tenterbook.piece.Studio;

/**
 * Defaults for reading a text.
 *
 * @param currency of a price that names none
 * @param lengths units of a length that names none
 */
public record Reading(Currency currency, LengthUnits lengths) {
    /** As the studio chose. */
    public static Reading of(Studio studio) {
        return new Reading(studio.currency(), studio.lengthUnits());
    }
}
