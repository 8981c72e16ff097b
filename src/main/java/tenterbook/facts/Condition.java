package tenterbook.facts;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.measure.PartialDate;
import tenterbook.piece.Event;
import tenterbook.piece.EventKind;
import tenterbook.piece.Fault;
import tenterbook.piece.Piece;
import tenterbook.piece.condition.ConditionWords;
import tenterbook.piece.condition.Examination;
import tenterbook.piece.condition.Observation;
import tenterbook.piece.condition.Overall;

/**
 * The condition of a piece: its faults, the last examination and its observations, and events since then that may have changed
 * it.
 *
 * @param faults as recorded with the piece; they have no day
 * @param examinations reports, earliest first
 * @param notes events ‘examined’ of days of which there is no report, newest first
 * @param since washing, mending, dyeing and damage after the last examination, or on days that may be after it, in order
 */
public record Condition(List<Fault> faults, List<Examination> examinations, List<Event> notes, List<Event> since) {
    private static final Set<EventKind> CHANGES = EnumSet.of(EventKind.WASHED, EventKind.MENDED, EventKind.DYED_AGAIN);

    /** Words for damage, for events of kind ‘other’. */
    static final Pattern DAMAGE = Pattern.compile(ConditionWords.what().stream()
            .map(word -> Pattern.quote(word.word()))
            .collect(Collectors.joining("|", "(?i)(?<!\\p{L})(damaged?|torn|", ")(?!\\p{L})")));

    public Condition {
        faults = List.copyOf(faults);
        examinations = List.copyOf(examinations);
        notes = List.copyOf(notes);
        since = List.copyOf(since);
    }

    /** @param examinations of the piece, earliest first */
    static Condition of(Piece piece, List<Examination> examinations) {
        List<Event> notes = piece.events().stream()
                .filter(event -> event.kind() == EventKind.EXAMINED)
                .filter(event -> examinations.stream().noneMatch(each -> sameDays(each.when(), event.when())))
                .sorted(Comparator.comparing((Event event) -> first(event.when()))
                        .reversed())
                .toList();
        Condition looked = new Condition(piece.faults(), examinations, notes, List.of());
        Optional<PartialDate> last = looked.lastLooked();
        return new Condition(
                piece.faults(),
                examinations,
                notes,
                piece.events().stream()
                        .filter(Condition::bearsOnCondition)
                        .filter(event -> last.isEmpty() || mayFollow(event.when(), last.get()))
                        .toList());
    }

    private static boolean bearsOnCondition(Event event) {
        return CHANGES.contains(event.kind())
                || event.kind() == EventKind.OTHER
                        && DAMAGE.matcher(event.note()).find();
    }

    private static boolean sameDays(PartialDate one, PartialDate other) {
        return one.known() && Objects.equals(one.from(), other.from()) && Objects.equals(one.to(), other.to());
    }

    private static boolean mayFollow(PartialDate event, PartialDate look) {
        LocalDate latest = event.to() == null ? LocalDate.MAX : event.to();
        return latest.isAfter(first(look));
    }

    private static LocalDate first(PartialDate when) {
        if (when.from() != null) {
            return when.from();
        }
        return when.to() != null ? when.to() : LocalDate.MIN;
    }

    /** The latest report. */
    public Optional<Examination> last() {
        return examinations.isEmpty() ? Optional.empty() : Optional.of(examinations.get(examinations.size() - 1));
    }

    /** The newest note, if newer than every report; a report takes precedence over a note of the same day. */
    public Optional<Event> newerNote() {
        return notes.stream()
                .findFirst()
                .filter(note -> last().map(report -> first(note.when()).isAfter(first(report.when())))
                        .orElse(true));
    }

    /** The day of the last examination, by a report or a note; empty for none. */
    public Optional<PartialDate> lastLooked() {
        return newerNote().map(Event::when).or(() -> last().map(Examination::when));
    }

    /** Observations of the last report that were not gone. */
    public List<Observation> present() {
        return last().map(Examination::present).orElse(List.of());
    }

    /** Reports of days of which no event ‘examined’ is noted with the piece, earliest first. */
    public List<Examination> unnoted(Piece piece) {
        return examinations.stream()
                .filter(report -> piece.events().stream()
                        .noneMatch(
                                event -> event.kind() == EventKind.EXAMINED && sameDays(report.when(), event.when())))
                .toList();
    }

    /** Days on which the piece was examined, up to that of {@code report}, and of which there is no report. */
    public List<PartialDate> withoutReport(Piece piece, Examination report) {
        return piece.events().stream()
                .filter(event -> event.kind() == EventKind.EXAMINED)
                .map(Event::when)
                .filter(day -> examinations.stream().noneMatch(each -> sameDays(each.when(), day)))
                .filter(day -> day.from() == null
                        || report.when().from() == null
                        || !day.from().isAfter(report.when().from()))
                .toList();
    }

    /** Reports made before one, earliest first. */
    public List<Examination> before(Examination examination) {
        return examinations.stream()
                .filter(each -> Examination.IN_TIME.compare(each, examination) < 0)
                .toList();
    }

    /** The state of the whole in the last report; empty where it is not judged. */
    public Optional<Overall> overall() {
        return last().map(Examination::overall);
    }

    /** Events of kind ‘other’ since then whose note mentions damage. */
    public List<Event> damage() {
        return since.stream().filter(event -> event.kind() == EventKind.OTHER).toList();
    }

    /** Whether nothing is known of it. */
    public boolean unknown() {
        return Denial.NO_FAULT_AND_NO_EXAMINATION.of(this).isPresent();
    }

    /** All of it in sentences. What is not recorded is called so and does not count as sound. */
    public String inWords() {
        return ConditionSentences.of(this);
    }

    /** The observations of a report that were not gone, as in 'stain, snag'; else that there is none, or its summary. */
    public static String seenInBrief(Examination examination) {
        String seen = ConditionSentences.seen(examination, Observation::what);
        return seen.isEmpty() ? examination.summary() : seen;
    }

    /** Distinguishing features: its faults, and the observations of the last report; empty where neither is recorded. */
    public String features() {
        return Stream.concat(
                        faults.stream().map(ConditionSentences::words),
                        present().stream().map(ConditionSentences::words))
                .collect(Collectors.joining("; "));
    }
}
