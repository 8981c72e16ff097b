package tenterbook.material;

import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.words.Message;

/**
 * A lot of dye, mordant or assistant.
 *
 * @param name the plain name, as in 'weld' or 'aluminium acetate'; this is what labels say
 * @param organism the plant's or animal's scientific name, or the mineral's formula
 * @param part which part, as in 'root' or 'dried tops'
 * @param form as in 'extract', 'chopped', 'crystals'
 * @param lot the supplier's lot or the harvest
 * @param bought how much was bought or gathered, as a mass
 */
public record Lot(
        LotId id,
        Role role,
        String name,
        Source source,
        String organism,
        String part,
        String form,
        String lot,
        String supplier,
        PartialDate boughtOn,
        Quantity bought,
        Money price,
        String notes) {
    public Lot {
        role = role == null ? Role.DYE : role;
        name = name == null ? "" : name.strip();
        source = source == null ? Source.UNKNOWN : source;
        organism = organism == null ? "" : organism.strip();
        part = part == null ? "" : part.strip();
        form = form == null ? "" : form.strip();
        lot = lot == null ? "" : lot.strip();
        supplier = supplier == null ? "" : supplier.strip();
        boughtOn = boughtOn == null ? PartialDate.UNRECORDED : boughtOn;
        bought = bought == null ? Quantity.UNRECORDED : bought;
        notes = notes == null ? "" : notes.strip();
    }

    public String title() {
        return name.isEmpty()
                ? id.value()
                : lot.isEmpty()
                        ? name
                        : Message.of("material.lot-title", "name", name, "lot", lot)
                                .inEnglish();
    }
}
