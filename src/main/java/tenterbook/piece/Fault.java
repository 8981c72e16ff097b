package tenterbook.piece;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A fault of a piece.
 *
 * @param kind in the maker's words, as in 'leak', 'bleed', 'pale inner layers'; searched as a facet
 * @param where as in 'at the beak, layer 3'
 * @param note anything else
 */
public record Fault(String kind, String where, String note) {
    /** The distinct kinds of these faults, as first written; case does not matter. */
    public static List<String> kinds(List<Fault> faults) {
        Map<String, String> kinds = new LinkedHashMap<>();
        faults.stream()
                .map(Fault::kind)
                .filter(kind -> !kind.isEmpty())
                .forEach(kind -> kinds.putIfAbsent(kind.toLowerCase(Locale.ROOT), kind));
        return List.copyOf(kinds.values());
    }

    public Fault {
        kind = kind == null ? "" : kind.strip();
        where = where == null ? "" : where.strip();
        note = note == null ? "" : note.strip();
    }
}
