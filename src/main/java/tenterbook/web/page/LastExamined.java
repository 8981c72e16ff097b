package tenterbook.web.page;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.Examination;

/** When a piece was last examined: by its reports, and by what is merely noted among its events. */
final class LastExamined {
    private static final String LABEL = "Last examined";

    private LastExamined() {}

    /** Events ‘examined’ that no report of the same day tells more of, newest first. */
    static List<Event> notes(Piece piece, List<Examination> examinations) {
        return piece.events().stream()
                .filter(event -> event.kind() == EventKind.EXAMINED)
                .filter(event -> examinations.stream().noneMatch(each -> sameDays(each.when(), event.when())))
                .sorted(Comparator.comparing((Event event) -> day(event.when())).reversed())
                .toList();
    }

    /**
     * The newest of both, saying which it is; a report goes before a note of the same day.
     *
     * @param examinations of the piece, earliest first
     */
    static Fact fact(Piece piece, List<Examination> examinations, LocalDate today) {
        List<Event> notes = notes(piece, examinations);
        if (examinations.isEmpty() && notes.isEmpty()) {
            return new Fact(LABEL, Fact.NOT_RECORDED);
        }
        Examination report = examinations.isEmpty() ? null : examinations.get(examinations.size() - 1);
        if (notes.isEmpty() || report != null && !day(notes.get(0).when()).isAfter(day(report.when()))) {
            return report(report, today);
        }
        Event note = notes.get(0);
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

    private static boolean sameDays(PartialDate one, PartialDate other) {
        return one.known()
                && java.util.Objects.equals(one.from(), other.from())
                && java.util.Objects.equals(one.to(), other.to());
    }

    private static LocalDate day(PartialDate when) {
        return Optional.ofNullable(when.from())
                .or(() -> Optional.ofNullable(when.to()))
                .orElse(LocalDate.MIN);
    }
}
