package tenterbook.piece.condition;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;
import tenterbook.words.Joined;
import tenterbook.words.Message;
import tenterbook.words.Refusal;
import tenterbook.words.Written;

/**
 * What changed between two examinations of one piece. Observations with the same number are of the same thing. One that the
 * later examination does not list was not checked; it is never assumed to be gone.
 *
 * @param changes by number
 */
public record Comparison(Examination before, Examination after, List<Change> changes) {
    public Comparison {
        changes = List.copyOf(changes);
    }

    /** @throws IllegalArgumentException if they are of two pieces */
    public static Comparison of(Examination before, Examination after) {
        if (!before.piece().equals(after.piece())) {
            throw Refusal.of("condition.two-pieces", "before", before.piece(), "after", after.piece());
        }
        Map<Integer, Observation> earlier = byNumber(before);
        Map<Integer, Observation> later = byNumber(after);
        TreeMap<Integer, Change> changes = new TreeMap<>();
        earlier.forEach((number, was) -> {
            Observation is = later.get(number);
            if (is != null || !was.gone()) {
                changes.put(number, change(was, is));
            }
        });
        later.forEach((number, is) -> changes.computeIfAbsent(
                number,
                n -> new Change(
                        n, Change.Kind.NEW, null, is, List.of(), doubtOfNew(is).orElse(null))));
        return new Comparison(before, after, List.copyOf(changes.values()));
    }

    private static Map<Integer, Observation> byNumber(Examination examination) {
        return examination.observations().stream().collect(Collectors.toMap(Observation::number, Function.identity()));
    }

    private static Change change(Observation was, @Nullable Observation is) {
        if (is == null) {
            return new Change(was.number(), Change.Kind.NOT_CHECKED, was, null, List.of(), null);
        }
        ChangeSinceLast standing = is.standing() == null ? ChangeSinceLast.NOT_CHECKED : is.standing();
        Change.Kind kind = switch (standing) {
            case STILL_THERE -> Change.Kind.UNCHANGED;
            case WORSE -> Change.Kind.WORSE;
            case BETTER -> Change.Kind.BETTER;
            case GONE -> Change.Kind.GONE;
            case NOT_CHECKED -> Change.Kind.NOT_CHECKED;
        };
        List<Written> differs = kind == Change.Kind.GONE ? List.of() : differs(was, is);
        return new Change(
                was.number(), kind, was, is, differs, doubt(kind, was, is).orElse(null));
    }

    private static Optional<Written> doubtOfNew(Observation is) {
        boolean spokenOfBefore = is.standing() != null && is.standing() != ChangeSinceLast.NOT_CHECKED;
        return spokenOfBefore
                ? Optional.of(Message.of("condition.doubt-new", "standing", is.standing()))
                : Optional.empty();
    }

    private static List<Written> differs(Observation was, Observation is) {
        List<Written> words = new ArrayList<>();
        add(words, "what", was.what(), is.what());
        add(words, "zone", was.zone(), is.zone());
        add(words, "place", was.place(), is.place());
        add(words, "extent", text(was.extent()), text(is.extent()));
        add(words, "across", text(was.across()), text(is.across()));
        add(words, "severity", was.severity(), is.severity());
        add(words, "stability", was.stability(), is.stability());
        add(words, "note", was.note(), is.note());
        return words;
    }

    private static void add(List<Written> words, String field, @Nullable Object was, @Nullable Object is) {
        if (!Objects.toString(was, "").equals(Objects.toString(is, ""))) {
            words.add(Message.of("condition.differs." + field, "is", orEmpty(is), "was", orEmpty(was)));
        }
    }

    private static Object orEmpty(@Nullable Object text) {
        if (text == null) {
            return Message.of("measure.not-recorded");
        }
        return !(text instanceof Written) && text.toString().isEmpty() ? Message.of("condition.empty") : text;
    }

    private static Object text(Quantity quantity) {
        return quantity.recorded() ? quantity : "";
    }

    /** Only where the two lengths cannot be equal: overlapping or touching ranges raise no doubt. */
    private static Optional<Written> doubt(Change.Kind kind, Observation was, Observation is) {
        int grown = grown(was.extent(), is.extent());
        boolean against = kind == Change.Kind.UNCHANGED && grown != 0
                || kind == Change.Kind.WORSE && grown < 0
                || kind == Change.Kind.BETTER && grown > 0;
        return against
                ? Optional.of(Message.of(
                        "condition.doubt-extent", "kind", kind, "before", was.extent(), "after", is.extent()))
                : Optional.empty();
    }

    /** 1 where the second is certainly larger, −1 where certainly smaller, else 0. */
    private static int grown(Quantity was, Quantity is) {
        if (was.about() || is.about()) {
            return 0;
        }
        Quantity before = was.in(Unit.MILLIMETRE);
        Quantity after = is.in(Unit.MILLIMETRE);
        if (before.high() != null && after.low() != null && after.low() > before.high()) {
            return 1;
        }
        return before.low() != null && after.high() != null && after.high() < before.low() ? -1 : 0;
    }

    public List<Change> of(Change.Kind kind) {
        return changes.stream().filter(change -> change.kind() == kind).toList();
    }

    /** The state of the whole where it is another, and the observations, as in 'overall condition: good, now fair; 1 new'. */
    public Written inWords() {
        return Joined.with("; ", overall(), observations());
    }

    private Written overall() {
        return before.overall() == after.overall()
                ? Joined.NOTHING
                : Message.of(
                        "condition.overall-changed", "was", orEmpty(before.overall()), "is", orEmpty(after.overall()));
    }

    /** As in '2 new, 1 worse, 3 still there'; that none is listed where there is none. */
    private Written observations() {
        if (changes.isEmpty()) {
            return Message.of("condition.none-in-either");
        }
        return new Joined(
                ", ",
                Arrays.stream(Change.Kind.values())
                        .filter(kind -> !of(kind).isEmpty())
                        .map(kind -> Message.of("condition.counted", "count", of(kind).size(), "kind", kind))
                        .toList());
    }
}
