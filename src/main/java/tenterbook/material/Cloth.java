package tenterbook.material;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Money;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;

/**
 * A bolt of cloth.
 *
 * @param name as in 'silk habotai'
 * @param content the fibres, as the supplier stated or a test found; empty where not known
 * @param contentEvidence source of the content: a supplier's invoice, a burn test, memory
 * @param arealWeight weight of the cloth as bought, as areal weight (g/m² or momme)
 * @param width selvedge to selvedge, as a length
 * @param lot the supplier's lot or the bolt's mark
 * @param wovenIn country of origin, as stated to the maker
 * @param bought how much was bought, as a length
 * @param price paid for the whole bolt; null where not recorded
 * @param finish what was done to it before dyeing, as in 'mercerised' or 'sized'; empty where not recorded
 */
public record Cloth(
        ClothId id,
        String name,
        List<FibreShare> content,
        String contentEvidence,
        Quantity arealWeight,
        Quantity width,
        String weave,
        String lot,
        String supplier,
        String wovenIn,
        PartialDate boughtOn,
        Quantity bought,
        @Nullable Money price,
        String notes,
        String finish) {
    public Cloth {
        name = name == null ? "" : name.strip();
        content = content == null ? List.of() : List.copyOf(content);
        contentEvidence = contentEvidence == null ? "" : contentEvidence.strip();
        arealWeight = arealWeight == null ? Quantity.UNRECORDED : arealWeight;
        width = width == null ? Quantity.UNRECORDED : width;
        weave = weave == null ? "" : weave.strip();
        lot = lot == null ? "" : lot.strip();
        supplier = supplier == null ? "" : supplier.strip();
        wovenIn = wovenIn == null ? "" : wovenIn.strip();
        boughtOn = boughtOn == null ? PartialDate.UNRECORDED : boughtOn;
        bought = bought == null ? Quantity.UNRECORDED : bought;
        notes = notes == null ? "" : notes.strip();
        finish = finish == null ? "" : finish.strip();
    }

    /** A bolt whose finish is not recorded. */
    public Cloth(
            ClothId id,
            String name,
            List<FibreShare> content,
            String contentEvidence,
            Quantity arealWeight,
            Quantity width,
            String weave,
            String lot,
            String supplier,
            String wovenIn,
            PartialDate boughtOn,
            Quantity bought,
            @Nullable Money price,
            String notes) {
        this(
                id,
                name,
                content,
                contentEvidence,
                arealWeight,
                width,
                weave,
                lot,
                supplier,
                wovenIn,
                boughtOn,
                bought,
                price,
                notes,
                "");
    }

    /** The bolt's name in full, as in 'SH silk habotai'. */
    public String title() {
        return name.isEmpty() ? id.value() : id.value() + " " + name;
    }
}
