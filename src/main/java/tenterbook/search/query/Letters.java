package tenterbook.search.query;

import java.util.Collection;
import java.util.Comparator;
import java.util.Optional;
import org.apache.lucene.util.automaton.CharacterRunAutomaton;
import org.apache.lucene.util.automaton.LevenshteinAutomata;
import org.apache.lucene.util.automaton.Operations;

/** Letters that are wrong in a word. */
public final class Letters {
    private Letters() {}

    /** Letters that may be wrong in a word of this length. */
    public static int edits(String word) {
        int letters = word.codePointCount(0, word.length());
        if (letters < 4 || word.chars().allMatch(Character::isDigit)) {
            return 0;
        }
        return letters < 7 ? 1 : 2;
    }

    /** The word that was most likely meant: fewest wrong letters, then the same first letter, then by the alphabet. */
    public static Optional<String> nearest(String word, Collection<String> words) {
        for (int edits = 1; edits <= edits(word); edits++) {
            CharacterRunAutomaton near = new CharacterRunAutomaton(Operations.determinize(
                    new LevenshteinAutomata(word, true).toAutomaton(edits), Operations.DEFAULT_DETERMINIZE_WORK_LIMIT));
            Optional<String> found = words.stream()
                    .filter(other -> edits(other) > 0 && near.run(other))
                    .min(Comparator.comparing((String other) -> other.charAt(0) != word.charAt(0))
                            .thenComparing(Comparator.naturalOrder()));
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }
}
