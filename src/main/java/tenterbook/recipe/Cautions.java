package tenterbook.recipe;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVRecord;
import tenterbook.material.Lot;
import tenterbook.measure.Quantity;
import tenterbook.measure.QuantityText;
import tenterbook.measure.QuantityWords;
import tenterbook.measure.Unit;
import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Usual cautions for a step, by its substances and its work. They are reminders and no safety advice: each list ends by
 * deferring to safety sheets and local rules. A substance is recognised by words in the lot's name; one that is not in the
 * table gets no caution, which does not mean that it is harmless.
 */
public final class Cautions {
    /** The last entry of every list. */
    public static final Message DEFERS = Message.of("recipe.caution.defers");

    /** Water at or above this, in °C, scalds within seconds. */
    private static final double SCALDS_FROM_CELSIUS = Table.rows("usual-numbers.csv").stream()
            .filter(row -> row.get("of").equals("scald"))
            .mapToDouble(row -> Double.parseDouble(row.get("low")))
            .findFirst()
            .orElseThrow();

    private static final Map<String, String> HAZARDS = Table.rows("hazard-statements.csv").stream()
            .collect(Collectors.toMap(row -> row.get("code"), row -> row.get("says")));

    private static final Named<Caution> SUBSTANCES = new Named<>(Table.rows("substances.csv"), Cautions::caution);

    private Cautions() {}

    private static Caution caution(CSVRecord row) {
        String name = Character.toUpperCase(row.get("chemical").charAt(0))
                + row.get("chemical").substring(1);
        String hazards = Arrays.stream(row.get("statements").split(" "))
                .filter(statement -> !statement.isEmpty())
                .map(Cautions::hazard)
                .collect(Collectors.joining(", "));
        String first = hazards.isEmpty() ? "see " + row.get("source") : hazards + " [" + row.get("source") + "]";
        return new Caution(name + ": " + first + "; " + row.get("note") + ".");
    }

    /** A statement in words, with the concentration from which or between which it holds, as in {@code H315@10-25}. */
    private static String hazard(String statement) {
        String[] codeAndLimit = statement.split("@");
        String limit = codeAndLimit.length < 2
                ? ""
                : (codeAndLimit[1].contains("-") ? ", at " : ", from ")
                        + QuantityWords.understood(QuantityText.read(codeAndLimit[1], Unit.PERCENT))
                                .inEnglish();
        return HAZARDS.get(codeAndLimit[0]) + " (" + codeAndLimit[0] + limit + ")";
    }

    /** A row of the table of substances, which is in English only. */
    private record Caution(String text) implements Written {
        @Override
        public String in(Conventions conventions) {
            return text;
        }
    }

    /** Cautions for one step and all of its lots, without repetition. */
    public static List<Written> of(Step step, List<Lot> lots) {
        List<Written> cautions = new ArrayList<>();
        for (Lot lot : lots) {
            cautions.addAll(SUBSTANCES.in(lot.name() + " " + lot.form()));
        }
        if (step.dipped()) {
            cautions.add(Message.of("recipe.caution.vat"));
        }
        if (mayScald(step)) {
            cautions.add(Message.of("recipe.caution.hot"));
        }
        return closed(cautions);
    }

    /** Cautions for clamping itself. */
    public static List<Written> ofClamping() {
        return closed(List.of(Message.of("recipe.caution.clamping"), Message.of("recipe.caution.letting-go")));
    }

    /** True unless the bath is known to be cooler, since mordant and dye baths are usually hot. */
    private static boolean mayScald(Step step) {
        Quantity temperature = step.temperature();
        if (temperature.known() && temperature.unit().dimension() == Unit.CELSIUS.dimension()) {
            Quantity celsius = temperature.in(Unit.CELSIUS);
            return celsius.high() == null || celsius.high() >= SCALDS_FROM_CELSIUS;
        }
        return step.kind() == StepKind.MORDANTING || step.kind() == StepKind.BATH;
    }

    private static List<Written> closed(List<? extends Written> cautions) {
        List<Written> distinct = new ArrayList<>(cautions.stream().distinct().toList());
        if (!distinct.isEmpty()) {
            distinct.add(DEFERS);
        }
        return List.copyOf(distinct);
    }
}
