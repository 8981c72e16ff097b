package tenterbook.piece.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Quantity;
import tenterbook.measure.Unit;

/**
 * What changed between two examinations of one piece, thing by thing. Things are the same that have the same number. What the
 * later examination does not speak of was not checked; it is never taken for gone.
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
            throw new IllegalArgumentException("Two examinations of one piece can be compared; these are of %s and %s."
                    .formatted(before.piece(), after.piece()));
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
                number, n -> new Change(n, Change.Kind.NEW, null, is, List.of(), doubtOfNew(is))));
        return new Comparison(before, after, List.copyOf(changes.values()));
    }

    private static Map<Integer, Observation> byNumber(Examination examination) {
        return examination.observations().stream().collect(Collectors.toMap(Observation::number, Function.identity()));
    }

    private static Change change(Observation was, @Nullable Observation is) {
        if (is == null) {
            return new Change(was.number(), Change.Kind.NOT_CHECKED, was, null, List.of(), "");
        }
        Standing standing = is.standing() == null ? Standing.NOT_CHECKED : is.standing();
        Change.Kind kind = switch (standing) {
            case STILL_THERE -> Change.Kind.UNCHANGED;
            case WORSE -> Change.Kind.WORSE;
            case BETTER -> Change.Kind.BETTER;
            case GONE -> Change.Kind.GONE;
            case NOT_CHECKED -> Change.Kind.NOT_CHECKED;
        };
        List<String> differs = kind == Change.Kind.GONE ? List.of() : differs(was, is);
        return new Change(was.number(), kind, was, is, differs, doubt(kind, was, is));
    }

    private static String doubtOfNew(Observation is) {
        boolean spokenOfBefore = is.standing() != null && is.standing() != Standing.NOT_CHECKED;
        return spokenOfBefore
                ? "Said to be ‘%s’, yet the earlier examination does not have it.".formatted(is.standing())
                : "";
    }

    private static List<String> differs(Observation was, Observation is) {
        List<String> words = new ArrayList<>();
        add(words, "now called", was.what(), is.what());
        add(words, "zone", was.zone(), is.zone());
        add(words, "place", was.place(), is.place());
        add(words, "extent", text(was.extent()), text(is.extent()));
        add(words, "across", text(was.across()), text(is.across()));
        add(words, "severity", word(was.severity()), word(is.severity()));
        add(words, "stability", word(was.stability()), word(is.stability()));
        add(words, "note", was.note(), is.note());
        return words;
    }

    private static String word(@Nullable Enum<?> choice) {
        return choice == null ? "not said" : choice.toString();
    }

    private static void add(List<String> words, String field, String was, String is) {
        if (!was.equals(is)) {
            words.add("%s %s, was %s".formatted(field, is.isEmpty() ? "empty" : is, was.isEmpty() ? "empty" : was));
        }
    }

    private static String text(Quantity quantity) {
        return quantity.recorded() ? quantity.toString() : "";
    }

    /** Only where the two lengths cannot mean the same: ranges that touch leave no doubt. */
    private static String doubt(Change.Kind kind, Observation was, Observation is) {
        int grown = grown(was.extent(), is.extent());
        boolean against = kind == Change.Kind.UNCHANGED && grown != 0
                || kind == Change.Kind.WORSE && grown < 0
                || kind == Change.Kind.BETTER && grown > 0;
        return against
                ? "Said to be ‘%s’, yet its extent went from %s to %s.".formatted(kind, was.extent(), is.extent())
                : "";
    }

    /** 1 where the second is surely larger, −1 where surely smaller, 0 where neither can be said. */
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

    /** As in '2 new, 1 worse, 3 still there'; 'nothing was seen in either' where there is none. */
    public String inWords() {
        String counts = java.util.Arrays.stream(Change.Kind.values())
                .filter(kind -> !of(kind).isEmpty())
                .map(kind -> of(kind).size() + " " + kind)
                .collect(Collectors.joining(", "));
        return counts.isEmpty() ? "nothing was seen in either" : counts;
    }
}
