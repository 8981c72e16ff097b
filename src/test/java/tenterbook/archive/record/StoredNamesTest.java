package tenterbook.archive.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Choice;
import tenterbook.archive.field.Entered;
import tenterbook.archive.field.ListOf;
import tenterbook.archive.field.Part;
import tenterbook.archive.field.Value;

/**
 * Every name and code that may stand in a ledger, beside a list that only grows: a line that is missing here would make an older
 * archive unreadable. After adding a field, write the list anew with {@code -Dnames.write=true}.
 */
class StoredNamesTest {
    private static final Path FROZEN = Path.of("src/test/resources/golden/stored-names.txt");

    private static Set<String> names() {
        Set<String> names = new TreeSet<>();
        Kinds.ALL.forEach(kind -> {
            names.add("kind " + kind.name());
            if (kind.codec() instanceof Part<?> part) {
                add(kind.name(), part, names);
            }
        });
        return names;
    }

    private static void add(String at, Value<?> value, Set<String> names) {
        if (value instanceof Part<?> part) {
            part.fields().forEach(field -> {
                names.add("field %s.%s".formatted(at, field.name()));
                add(at + "." + field.name(), field.value(), names);
            });
        } else if (value instanceof ListOf<?> list) {
            add(at + ".*", list.element(), names);
        } else if (value instanceof Entered<?> entered) {
            add(at, entered.stored(), names);
        } else if (value instanceof Choice<?> choice) {
            choice.codes()
                    .all()
                    .forEach(code ->
                            names.add("code %s = %s".formatted(choice.codes().name(), code)));
        }
    }

    @Test
    void everyStoredNameAndCodeIsInTheFrozenListAndNoneIsGone() throws IOException {
        if (Boolean.getBoolean("names.write")) {
            Files.writeString(FROZEN, String.join("\n", names()) + "\n");
        }
        assertThat(names()).containsExactlyElementsOf(Files.readAllLines(FROZEN));
    }
}
