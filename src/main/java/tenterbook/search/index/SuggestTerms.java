package tenterbook.search.index;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import tenterbook.facts.PieceFacts;
import tenterbook.material.Role;
import tenterbook.piece.Fault;
import tenterbook.piece.Piece;
import tenterbook.search.query.FacetValues;

/**
 * The terms suggestions are read from: a letter for the kind, what is typed to reach it (folded, from the start of any of its
 * words), the text and the value.
 */
public final class SuggestTerms {
    public static final char BETWEEN = '\u001f';
    /** Kinds by letter, in the order in which they are offered. */
    public static final Map<Character, String> KINDS = new java.util.TreeMap<>(
            Map.of('a', "number", 'b', "board", 'c', "title", 'd', "dye", 'e', "cloth", 'f', "fault", 'g', "place"));

    private static final int LONGEST = 120;
    private final Set<String> terms = new LinkedHashSet<>();

    private SuggestTerms() {}

    static Set<String> of(PieceFacts facts) {
        SuggestTerms made = new SuggestTerms();
        Piece piece = facts.piece();
        piece.numbers().forEach(number -> made.number(number.value()));
        facts.boards()
                .values()
                .forEach(board -> made.words('b', board.title(), board.id().value()));
        made.words('c', piece.title(), piece.title());
        made.words('c', piece.otherTitle(), piece.otherTitle());
        facts.lotsUsed(Role.DYE)
                .map(PieceFacets::nameOf)
                .forEach(name -> made.words('d', name, name.toLowerCase(java.util.Locale.ROOT)));
        facts.cloth()
                .cloths()
                .forEach(cloth -> made.words('e', cloth.title(), cloth.id().value()));
        Fault.kinds(piece.faults()).forEach(kind -> made.words('f', kind, kind.toLowerCase(java.util.Locale.ROOT)));
        made.words('g', piece.place(), piece.place());
        return made.terms;
    }

    private void number(String number) {
        put('a', FacetValues.squashed(number), number, number);
        int lastRun = number.replaceAll("\\d+$", "").length();
        if (lastRun > 0 && lastRun < number.length()) {
            put('a', FacetValues.squashed(number.substring(lastRun)), number, number);
        }
    }

    private void words(char kind, String text, String value) {
        String folded = FacetValues.folded(text);
        for (int i = 0; i < folded.length(); i++) {
            boolean starts = i == 0
                    || Character.isLetterOrDigit(folded.charAt(i)) && !Character.isLetterOrDigit(folded.charAt(i - 1));
            if (starts) {
                put(kind, folded.substring(i), text, value);
            }
        }
    }

    private void put(char kind, String key, String text, String value) {
        if (!text.isBlank() && text.length() <= LONGEST && !key.isEmpty() && text.indexOf(BETWEEN) < 0) {
            terms.add(kind + key + BETWEEN + text + BETWEEN + value);
        }
    }
}
