package tenterbook.material;

import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.words.Message;
import tenterbook.words.Refusal;

/**
 * A lot of dye, mordant or assistant.
 *
 * @param name the plain name, as printed on labels: 'weld', 'aluminium acetate'
 * @param source null where not recorded; {@link Source#UNKNOWN} where it was looked for and not found
 * @param organism the plant's or animal's scientific name, or the mineral's formula
 * @param part which part, as in 'root' or 'dried tops'
 * @param form as in 'extract', 'chopped', 'crystals'
 * @param lot the supplier's lot or the harvest
 * @param bought how much was bought or gathered, as a mass
 * @param warnBelow what is to be left before it is shown as running low, as a mass
 */
public record Lot(
        LotId id,
        Role role,
        String name,
        @Nullable Source source,
        String organism,
        String part,
        String form,
        String lot,
        String supplier,
        PartialDate boughtOn,
        Quantity bought,
        @Nullable Money price,
        String notes,
        Quantity warnBelow) {
    public Lot {
        if (role == null) {
            throw Refusal.of("material.lot-without-role");
        }
        name = name == null ? "" : name.strip();
        organism = organism == null ? "" : organism.strip();
        part = part == null ? "" : part.strip();
        form = form == null ? "" : form.strip();
        lot = lot == null ? "" : lot.strip();
        supplier = supplier == null ? "" : supplier.strip();
        boughtOn = boughtOn == null ? PartialDate.UNRECORDED : boughtOn;
        bought = bought == null ? Quantity.UNRECORDED : bought;
        warnBelow = warnBelow == null ? Quantity.UNRECORDED : warnBelow;
        notes = notes == null ? "" : notes.strip();
    }

    public String title() {
        if (name.isEmpty()) {
            return id.value();
        }
        return lot.isEmpty()
                ? name
                : Message.of("material.lot-title", "name", name, "lot", lot).onPaper();
    }
}
