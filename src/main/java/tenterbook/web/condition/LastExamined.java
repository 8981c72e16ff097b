package tenterbook.web.condition;

import static tenterbook.web.page.Words.w;

import java.time.LocalDate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.facts.Condition;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.condition.Examination;
import tenterbook.web.record.FactLine;

/** When a piece was last examined: by its reports, and by what is merely noted among its events. */
public final class LastExamined {
    private LastExamined() {}

    private static String label() {
        return w("examination-form.last-examined");
    }

    /** The newest of both, saying which it is. */
    public static FactLine fact(Condition condition, LocalDate today) {
        return condition
                .newerNote()
                .map(note -> note(note, today))
                .or(() -> condition.last().map(report -> report(report, today)))
                .orElse(new FactLine(label(), FactLine.notRecorded()));
    }

    private static FactLine note(Event note, LocalDate today) {
        return new FactLine(
                label(),
                w("examination-form.noted", "dated", note.when().recorded(), "when", note.when()),
                joined("; ", note.note(), doubt(note.when(), today)));
    }

    /** As in '2024-09-27', with 'fair: stain, snag' beside it. */
    private static FactLine report(Examination last, LocalDate today) {
        String seen =
                last.present().stream().map(each -> each.what()).distinct().collect(Collectors.joining(", "));
        String state = last.overall() == null ? "" : w(last.overall());
        return new FactLine(
                label(), w(last.when()), joined("; ", joined(": ", state, seen), doubt(last.when(), today)));
    }

    /** A question where the day lies ahead; empty where it does not. */
    static String doubt(PartialDate when, LocalDate today) {
        return when.from() != null && when.from().isAfter(today) ? w("examination-form.in-the-future") : "";
    }

    private static String joined(String between, String... parts) {
        return Stream.of(parts).filter(text -> !text.isEmpty()).collect(Collectors.joining(between));
    }
}
