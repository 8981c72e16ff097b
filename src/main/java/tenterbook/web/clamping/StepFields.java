package tenterbook.web.clamping;

import java.util.Map;
import java.util.Set;
import tenterbook.recipe.StepKind;
import tenterbook.web.form.Form;

/** Which fields the form shows for a kind of step. A field that holds something is shown whatever the kind. */
public final class StepFields {
    private static final Set<String> BATH = Set.of("charges", "temperature", "duration", "liquor", "liquorRatio", "ph");
    private static final Map<String, Set<String>> OF_KIND = Map.of(
            StepKind.PREPARATION.toString(),
            BATH,
            StepKind.MORDANTING.toString(),
            BATH,
            StepKind.BATH.toString(),
            BATH,
            StepKind.LOCAL_COLOUR.toString(),
            Set.of("charges", "holes", "temperature", "duration"),
            StepKind.DIPS.toString(),
            Set.of("charges", "vat", "dips", "temperature", "ph"),
            StepKind.RESTING.toString(),
            Set.of("duration", "temperature"),
            StepKind.WASHING.toString(),
            BATH,
            StepKind.OTHER.toString(),
            BATH);

    private StepFields() {}

    public static boolean shown(Form step, String field) {
        return OF_KIND.getOrDefault(step.text("kind"), Set.of()).contains(field)
                || step.has(field)
                || !step.inside(field).blank();
    }

    /** What the button for a kind of step asks: a new step of that kind, a bath with room for its first ingredient. */
    public static String order(String kind) {
        boolean filled = kind.equals(StepKind.MORDANTING.toString()) || kind.equals(StepKind.BATH.toString());
        return "add steps kind=" + kind + (filled ? "&charges.0.there=1" : "");
    }
}
