package tenterbook.archive.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.archive.act.ActFields;
import tenterbook.archive.field.Entered;
import tenterbook.archive.field.ListOf;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Value;

class FieldWordsTest {
    private static void add(Value<?> value, Set<String> keys) {
        if (value instanceof Part<?> part) {
            part.fields().forEach(field -> {
                keys.add(part.name() + "." + field.name());
                add(field.value(), keys);
            });
        } else if (value instanceof ListOf<?> list) {
            add(list.element(), keys);
        } else if (value instanceof Entered<?> entered
                && !(entered.stored() instanceof Part<?> part && part.name().startsWith("quantity"))) {
            add(entered.stored(), keys);
        }
    }

    @Test
    void everyDescribedFieldHasItsWordsAndNoWordsAreLeftOver() {
        Set<String> keys = new TreeSet<>();
        Kinds.ALL.forEach(kind -> {
            if (kind.codec() instanceof Part<?> part) {
                add(part, keys);
            }
        });
        add(ActFields.ACT, keys);
        add(ActFields.CORRECTION, keys);
        Set<String> written =
                new TreeSet<>(ResourceBundle.getBundle("words/fields").keySet());
        assertThat(written).containsAll(keys);
        written.removeAll(keys);
        written.removeIf(key -> key.endsWith(".missing") && keys.contains(key.substring(0, key.length() - 8)));
        assertThat(written).containsExactlyInAnyOrder("missing", "basis", "row");
    }

    @Test
    void aDottedNameIsWrittenInWords() {
        assertThat(FieldWords.path(ClampingRecord.CLAMPING, "steps.1.liquorRatio")
                        .inEnglish())
                .isEqualTo("step 2, liquor ratio");
        assertThat(FieldWords.path(PieceRecord.PIECE, "length.basis").inEnglish())
                .isEqualTo("length, measured or estimated");
    }
}
