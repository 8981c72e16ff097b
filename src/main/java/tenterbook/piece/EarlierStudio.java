package tenterbook.piece;

import tenterbook.measure.PartialDate;

/**
 * Particulars of the studio that held until a day, after which those of the next such record or the present ones hold.
 *
 * @param until the first day on which they no longer held
 * @param maker empty where not recorded, like all of these
 * @param place town and country
 * @param dyedIn country of the dyeing
 */
public record EarlierStudio(PartialDate until, String name, String maker, String place, String dyedIn) {
    public EarlierStudio {
        until = until == null ? PartialDate.UNRECORDED : until;
        name = name == null ? "" : name.strip();
        maker = maker == null ? "" : maker.strip();
        place = place == null ? "" : place.strip();
        dyedIn = dyedIn == null ? "" : dyedIn.strip();
    }
}
