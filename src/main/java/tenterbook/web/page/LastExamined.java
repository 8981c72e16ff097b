package tenterbook.web.page;

import java.time.LocalDate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.facts.Condition;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.condition.Examination;

/** When a piece was last examined: by its reports, and by what is merely noted among its events. */
final class LastExamined {
    private static final String LABEL = "Last examined";

    private LastExamined() {}

    /** The newest of both, saying which it is. */
    static Fact fact(Condition condition, LocalDate today) {
        return condition
                .newerNote()
                .map(note -> note(note, today))
                .or(() -> condition.last().map(report -> report(report, today)))
                .orElse(new Fact(LABEL, Fact.NOT_RECORDED));
    }

    private static Fact note(Event note, LocalDate today) {
        String when = note.when().recorded() ? note.when().toString() : "day not recorded";
        return new Fact(LABEL, when + ", noted without a report", joined("; ", note.note(), doubt(note.when(), today)));
    }

    /** As in '2024-09-27', with 'fair: stain, snag' beside it. */
    private static Fact report(Examination last, LocalDate today) {
        String seen =
                last.present().stream().map(each -> each.what()).distinct().collect(Collectors.joining(", "));
        String state = last.overall() == null ? "" : last.overall().toString();
        return new Fact(
                LABEL, last.when().toString(), joined("; ", joined(": ", state, seen), doubt(last.when(), today)));
    }

    /** A question where the day lies ahead; empty where it does not. */
    static String doubt(PartialDate when, LocalDate today) {
        return when.from() != null && when.from().isAfter(today) ? "this lies in the future; is the year right?" : "";
    }

    private static String joined(String between, String... parts) {
        return Stream.of(parts).filter(text -> !text.isEmpty()).collect(Collectors.joining(between));
    }
}
