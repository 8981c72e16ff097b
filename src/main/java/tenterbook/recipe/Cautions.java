package tenterbook.recipe;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import tenterbook.material.Lot;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;

/**
 * Usual cautions beside a step, by what went into it and what is done. They are reminders and no safety advice: each list
 * ends by saying what governs. A substance is known by words in the lot's name; one that no row knows gets no caution,
 * which does not mean that it is harmless.
 */
public final class Cautions {
    /** What stands last in every list. */
    public static final String DEFERS =
            "These are reminders, from memory and common practice, and may be incomplete. The supplier’s safety data sheet and your local rules govern; where they ask for a trained or licensed person, so do these notes.";

    /** Water at or above this scalds within seconds (from memory; children and thin skin sooner). */
    private static final double SCALDS_FROM_CELSIUS = 50;

    private static final Map<String, String> HAZARDS = Table.rows("hazard-statements.csv").stream()
            .collect(Collectors.toMap(row -> row.get("code"), row -> row.get("says")));

    private static final List<Substance> SUBSTANCES =
            Table.rows("chemical-safety.csv").stream().map(Substance::of).toList();

    private Cautions() {}

    private record Substance(Pattern words, String caution) {
        static Substance of(CSVRecord row) {
            String hazards = Arrays.stream(row.get("hazards").split(" "))
                    .filter(code -> !code.isEmpty())
                    .map(code -> HAZARDS.get(code) + " (" + code + ")")
                    .collect(Collectors.joining(", "));
            String name = Character.toUpperCase(row.get("chemical").charAt(0))
                    + row.get("chemical").substring(1);
            String said = hazards.isEmpty() ? row.get("note") : hazards + "; " + row.get("note");
            return new Substance(Table.words(row.get("words")), name + ": " + said + ".");
        }
    }

    /**
     * Cautions for one step and one of its lots.
     *
     * @param lot null for a step without charges
     * @return empty where there is nothing to say; otherwise ending with {@link #DEFERS}
     */
    public static List<String> of(Step step, @Nullable Lot lot) {
        return of(step, lot == null ? List.of() : List.of(lot));
    }

    /** Cautions for one step and all of its lots, each said once. */
    public static List<String> of(Step step, List<Lot> lots) {
        List<String> said = new ArrayList<>();
        for (Lot lot : lots) {
            String plain = Table.plain(lot.name() + " " + lot.form());
            SUBSTANCES.stream()
                    .filter(substance -> substance.words.matcher(plain).find())
                    .map(Substance::caution)
                    .forEach(said::add);
        }
        if (step.dipped()) {
            said.add(
                    "Vat: alkaline liquor burns eyes and skin; goggles and gloves, and water at hand to rinse eyes. A clamped bundle is heavy and slippery when wet.");
        }
        if (mayScald(step)) {
            said.add(
                    "Hot bath: scalds; lid on, handles in, children and animals out, and lift slowly. Use no pot for food.");
        }
        return closed(said);
    }

    /** Cautions for clamping itself. */
    public static List<String> ofClamping() {
        return closed(List.of(
                "Clamping: boards and screws pinch; keep fingers clear as they close, and stand clear of wedges driven under strain.",
                "Letting go: a clamp under strain can spring open; loosen the screws evenly."));
    }

    /** Unless the bath is known to be cooler: mordanting and dye baths are usually hot. */
    private static boolean mayScald(Step step) {
        Quantity temperature = step.temperature();
        if (temperature.known() && temperature.unit().dimension() == Unit.CELSIUS.dimension()) {
            Quantity celsius = temperature.in(Unit.CELSIUS);
            return celsius.high() == null || celsius.high() >= SCALDS_FROM_CELSIUS;
        }
        return step.kind() == StepKind.MORDANTING || step.kind() == StepKind.BATH;
    }

    private static List<String> closed(List<String> said) {
        List<String> distinct = new ArrayList<>(said.stream().distinct().toList());
        if (!distinct.isEmpty()) {
            distinct.add(DEFERS);
        }
        return List.copyOf(distinct);
    }
}
