package tenterbook.recipe;

import java.util.List;
import tenterbook.measure.PartialDate;
import tenterbook.measure.Quantity;
import tenterbook.words.Refusal;

/**
 * One step of a clamping. Which fields matter depends on the kind; none is required.
 *
 * @param charges what went into the bath
 * @param liquor volume of the bath or vat
 * @param liquorRatio litres of liquor for a kilogram of dry cloth
 * @param temperature of the bath
 * @param ph of the bath or vat
 * @param duration how long, in all
 * @param vat the vat's own name
 * @param holes names of the holes through which colour was put
 * @param dips the dip series, for a step of that kind
 */
public record Step(
        StepKind kind,
        PartialDate when,
        List<Charge> charges,
        Quantity liquor,
        Quantity liquorRatio,
        Quantity temperature,
        Quantity ph,
        Quantity duration,
        String vat,
        List<String> holes,
        DipSeries dips,
        String notes) {
    public Step {
        if (kind == null) {
            throw Refusal.of("recipe.step-without-kind");
        }
        when = when == null ? PartialDate.UNRECORDED : when;
        charges = charges == null ? List.of() : List.copyOf(charges);
        liquor = liquor == null ? Quantity.UNRECORDED : liquor;
        liquorRatio = liquorRatio == null ? Quantity.UNRECORDED : liquorRatio;
        temperature = temperature == null ? Quantity.UNRECORDED : temperature;
        ph = ph == null ? Quantity.UNRECORDED : ph;
        duration = duration == null ? Quantity.UNRECORDED : duration;
        vat = vat == null ? "" : vat.strip();
        holes = holes == null ? List.of() : List.copyOf(holes);
        dips = dips == null ? DipSeries.UNRECORDED : dips;
        notes = notes == null ? "" : notes.strip();
    }

    /** Whether the step is a dip series or has dips recorded. */
    public boolean dipped() {
        return kind == StepKind.DIPS || dips.recorded();
    }
}
