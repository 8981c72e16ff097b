package tenterbook.exchange.sheet;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tenterbook.archive.Archive;
import tenterbook.archive.Kinds;
import tenterbook.archive.field.Choice;
import tenterbook.archive.field.Flag;
import tenterbook.piece.Party;
import tenterbook.words.Conventions;
import tenterbook.words.Language;
import tenterbook.words.Refusal;
import tenterbook.words.Worded;

/** Words in cells where a form offers a choice: turned into the code or the identifier that is recorded. */
final class TypedWords {
    private static final Map<String, String> YES_AND_NO = Map.of(
            "yes", "yes", "y", "yes", "sim", "yes", "x", "yes", "true", "yes", "no", "no", "n", "no", "nao", "no",
            "false", "no");

    private final Archive archive;
    private final NewPeople people;
    private final Map<Choice<?>, Map<String, String>> choices = new HashMap<>();

    TypedWords(Archive archive, NewPeople people) {
        this.archive = archive;
        this.people = people;
    }

    /** @throws Refusal where a person of this name cannot be told */
    String recorded(SheetColumn column, String text) {
        if (column.value() instanceof Choice<?> choice) {
            return choices.computeIfAbsent(choice, TypedWords::codes).getOrDefault(ColumnNames.plain(text), text);
        }
        if (column.value() instanceof Flag) {
            return YES_AND_NO.getOrDefault(ColumnNames.plain(text), text);
        }
        return column.person() ? party(text) : text;
    }

    private static <E extends Enum<E>> Map<String, String> codes(Choice<E> choice) {
        Map<String, String> codes = new HashMap<>();
        for (E each : choice.codes().choices()) {
            if (each instanceof Worded word) {
                for (Language language : Language.values()) {
                    codes.putIfAbsent(
                            ColumnNames.plain(word.in(Conventions.english().in(language))),
                            choice.codes().code(each));
                }
            }
        }
        choice.codes().all().forEach(code -> codes.put(ColumnNames.plain(code), code));
        return codes;
    }

    /** By identifier or by name. */
    private String party(String text) {
        if (archive.ledger().find(Kinds.PARTY, text).isPresent()) {
            return text;
        }
        List<Party> called = archive.partiesCalled(text);
        if (called.size() > 1) {
            throw Refusal.of("import.person", "count", called.size(), "name", text);
        }
        return called.stream()
                .findFirst()
                .map(party -> party.id().value())
                .or(() -> people.called(text))
                .orElseThrow(() -> Refusal.of("import.person", "count", 0, "name", text));
    }
}
