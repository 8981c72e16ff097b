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
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Usual cautions beside a step, by what went into it and what is done. They are reminders and no safety advice: each list
 * ends by saying what governs. A substance is known by words in the lot's name; one that no row knows gets no caution,
 * which does not mean that it is harmless.
 */
public final class Cautions {
    /** What stands last in every list. */
    public static final Message DEFERS = Message.of("recipe.caution.defers");

    /** Water at or above this scalds within seconds (from memory; children and thin skin sooner). */
    private static final double SCALDS_FROM_CELSIUS = 50;

    private static final Map<String, String> HAZARDS = Table.rows("hazard-statements.csv").stream()
            .collect(Collectors.toMap(row -> row.get("code"), row -> row.get("says")));

    private static final List<Substance> SUBSTANCES =
            Table.rows("chemical-safety.csv").stream().map(Substance::of).toList();

    private Cautions() {}

    private record Substance(Pattern words, Caution caution) {
        static Substance of(CSVRecord row) {
            String hazards = Arrays.stream(row.get("hazards").split(" "))
                    .filter(code -> !code.isEmpty())
                    .map(code -> HAZARDS.get(code) + " (" + code + ")")
                    .collect(Collectors.joining(", "));
            String name = Character.toUpperCase(row.get("chemical").charAt(0))
                    + row.get("chemical").substring(1);
            String said = hazards.isEmpty() ? row.get("note") : hazards + "; " + row.get("note");
            return new Substance(Table.words(row.get("words")), new Caution(name + ": " + said + "."));
        }
    }

    /** From the table of substances, whose words are English alone. */
    private record Caution(String text) implements Written {
        @Override
        public String in(Conventions conventions) {
            return text;
        }
    }

    /**
     * Cautions for one step and one of its lots.
     *
     * @param lot null for a step without charges
     * @return empty where there is nothing to say; otherwise ending with {@link #DEFERS}
     */
    public static List<Written> of(Step step, @Nullable Lot lot) {
        return of(step, lot == null ? List.of() : List.of(lot));
    }

    /** Cautions for one step and all of its lots, each said once. */
    public static List<Written> of(Step step, List<Lot> lots) {
        List<Written> said = new ArrayList<>();
        for (Lot lot : lots) {
            String plain = Table.plain(lot.name() + " " + lot.form());
            SUBSTANCES.stream()
                    .filter(substance -> substance.words.matcher(plain).find())
                    .map(Substance::caution)
                    .forEach(said::add);
        }
        if (step.dipped()) {
            said.add(Message.of("recipe.caution.vat"));
        }
        if (mayScald(step)) {
            said.add(Message.of("recipe.caution.hot"));
        }
        return closed(said);
    }

    /** Cautions for clamping itself. */
    public static List<Written> ofClamping() {
        return closed(List.of(Message.of("recipe.caution.clamping"), Message.of("recipe.caution.letting-go")));
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

    private static List<Written> closed(List<? extends Written> said) {
        List<Written> distinct = new ArrayList<>(said.stream().distinct().toList());
        if (!distinct.isEmpty()) {
            distinct.add(DEFERS);
        }
        return List.copyOf(distinct);
    }
}
