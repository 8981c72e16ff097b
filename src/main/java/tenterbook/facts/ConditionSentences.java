package tenterbook.facts;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Fault;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.Observation;
import tenterbook.words.Message;
import tenterbook.words.Written;

/** The sentences of {@link Condition}. */
final class ConditionSentences {
    private ConditionSentences() {}

    static String of(Condition condition) {
        String looked = Denial.NO_FAULT_AND_NO_EXAMINATION.unless(
                condition,
                () -> joined(
                        " ",
                        Denial.NO_FAULT.unless(condition, () -> faults(condition.faults())),
                        condition.last().map(ConditionSentences::words).orElse(""),
                        condition.newerNote().map(ConditionSentences::noted).orElse("")));
        if (condition.since().isEmpty()) {
            return looked;
        }
        String later =
                condition.since().stream().map(ConditionSentences::happened).collect(Collectors.joining("; "));
        return joined(
                " ",
                Written.stop(looked),
                Written.stop(
                        condition.lastLooked().isPresent()
                                ? Message.of("facts.since-then", "later", later).onPaper()
                                : Written.capital(later)));
    }

    private static String faults(List<Fault> faults) {
        return Written.stop(
                Written.capital(faults.stream().map(ConditionSentences::words).collect(Collectors.joining("; "))));
    }

    /**
     * As in 'washed 2024-06: cold, by hand'. Of an event of kind ‘other’ only the words for damage, since its note may be
     * private.
     */
    private static String happened(Event event) {
        if (event.kind() == EventKind.OTHER) {
            return Message.of(
                            "facts.damage-noted",
                            "day",
                            day(event.when()),
                            "damage",
                            Condition.DAMAGE
                                    .matcher(event.note())
                                    .results()
                                    .map(found -> found.group().toLowerCase(Locale.ROOT))
                                    .distinct()
                                    .collect(Collectors.joining(", ")))
                    .onPaper();
        }
        return (event.note().isEmpty()
                        ? Message.of("facts.happened", "event", event.kind(), "day", day(event.when()))
                        : Message.of(
                                "facts.happened-note",
                                "event",
                                event.kind(),
                                "day",
                                day(event.when()),
                                "note",
                                event.note()))
                .onPaper();
    }

    private static Written day(PartialDate when) {
        return when.recorded() ? when : Message.of("facts.on-no-day");
    }

    private static String noted(Event note) {
        return (note.note().isEmpty()
                        ? Message.of("facts.examined-only", "day", day(note.when()))
                        : Message.of("facts.examined", "day", day(note.when()), "found", Written.stop(note.note())))
                .onPaper();
    }

    /** As in 'Examined 2024-09-27: fair. Sound but for one mark. Seen: stain (front; 12 mm; slight), snag.' */
    private static String words(Examination last) {
        String overall = last.overall() == null ? "" : last.overall().onPaper();
        String seen = seen(last, ConditionSentences::words);
        boolean listed = !last.present().isEmpty() && !seen.isEmpty();
        String found = joined(
                " ",
                Written.stop(overall),
                Written.stop(last.summary()),
                Written.stop(listed ? Message.of("facts.seen", "seen", seen).onPaper() : seen));
        return Message.of("facts.examined", "day", day(last.when()), "found", found)
                .onPaper();
    }

    /** Empty where a summary alone says what was seen. */
    static String seen(Examination examination, Function<Observation, String> words) {
        return Denial.NOTHING_NOTED.unless(
                examination,
                () -> examination.present().isEmpty()
                                && !examination.observations().isEmpty()
                        ? Message.of("facts.gone").onPaper()
                        : examination.present().stream().map(words).collect(Collectors.joining(", ")));
    }

    static String words(Observation seen) {
        String where = seen.inWords().onPaper();
        return seen.what() + (where.isEmpty() ? "" : " (" + where + ")");
    }

    /** As in 'leak, at the beak, layer 3: outer edge'. */
    static String words(Fault fault) {
        return joined(", ", fault.kind(), fault.where()) + (fault.note().isEmpty() ? "" : ": " + fault.note());
    }

    private static String joined(String between, String... parts) {
        return Stream.of(parts).filter(part -> !part.isBlank()).collect(Collectors.joining(between));
    }
}
