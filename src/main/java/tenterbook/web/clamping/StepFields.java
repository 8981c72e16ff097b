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

    /** Whether a new step of that kind begins with room for an ingredient. */
    public static boolean filled(String kind) {
        return kind.equals(StepKind.MORDANTING.toString()) || kind.equals(StepKind.BATH.toString());
    }
}
