package tenterbook.typeset;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.lucene.analysis.compound.hyphenation.Hyphenation;
import org.apache.lucene.analysis.compound.hyphenation.HyphenationTree;
import org.xml.sax.InputSource;

/**
 * Where an English word may be hyphenated, by Liang's method and the patterns of TeX. Only words in lower case: names may be of
 * another language.
 *
 * @see "F. M. Liang, Word Hy-phen-a-tion by Com-put-er, Stanford 1983"
 */
final class Hyphens {
    private static final int SHORTEST = 6;
    /** Letters that stay before and after a hyphen, as the patterns were made for. */
    private static final int BEFORE = 2;

    private static final int AFTER = 3;
    private static final int[] NONE = {};

    private Hyphens() {}

    private static final class Tree {
        private static final HyphenationTree ENGLISH = read();
    }

    /** Counts of letters before each hyphen; empty where the word is not to be hyphenated. */
    static int[] of(String word) {
        if (word.length() < SHORTEST || !word.chars().allMatch(c -> c >= 'a' && c <= 'z')) {
            return NONE;
        }
        Hyphenation found = Tree.ENGLISH.hyphenate(word, BEFORE, AFTER);
        // The tree counts both ends of the word among its places.
        return found == null
                ? NONE
                : IntStream.of(found.getHyphenationPoints())
                        .filter(at -> at >= BEFORE && at <= word.length() - AFTER)
                        .toArray();
    }

    /** The tree reads patterns only from its own XML, so the plain list is wrapped. */
    private static HyphenationTree read() {
        String classes = IntStream.rangeClosed('a', 'z')
                .mapToObj(letter -> Character.toString(letter) + Character.toUpperCase((char) letter))
                .collect(Collectors.joining(" "));
        try (InputStream in = Hyphens.class.getResourceAsStream("/label/hyphens-en-us.txt")) {
            String patterns = new String(in.readAllBytes(), StandardCharsets.US_ASCII)
                    .lines()
                    .filter(line -> !line.startsWith("%"))
                    .collect(Collectors.joining(" "));
            HyphenationTree tree = new HyphenationTree();
            tree.loadPatterns(new InputSource(new StringReader("<hyphenation-info><classes>" + classes
                    + "</classes><patterns>" + patterns + "</patterns></hyphenation-info>")));
            return tree;
        } catch (IOException e) {
            throw new UncheckedIOException("The hyphenation patterns cannot be read", e);
        }
    }
}
