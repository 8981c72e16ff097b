package tenterbook.search.query;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Set;
import org.tartarus.snowball.SnowballStemmer;
import org.tartarus.snowball.ext.EnglishStemmer;
import org.tartarus.snowball.ext.PortugueseStemmer;

/**
 * The stems of a word in both languages of the archive, since nobody says which one a note is written in: 'leaked' and 'leaks' share
 * one, 'vendida' and 'vendidas' share another. The algorithms are Snowball's, as in Lucene.
 */
public final class Stems {
    /** Before every stem in the index, so that no word typed is taken for one. */
    private static final char MARK = '\u0001';

    private static final ThreadLocal<SnowballStemmer> ENGLISH = ThreadLocal.withInitial(EnglishStemmer::new);
    private static final ThreadLocal<SnowballStemmer> PORTUGUESE = ThreadLocal.withInitial(PortugueseStemmer::new);

    private Stems() {}

    /** As the index holds them; none for numbers and for writing without letters that change. */
    public static Set<String> of(String word) {
        if (word.length() < 3 || !word.chars().allMatch(sign -> sign >= 'a' && sign <= 'z')) {
            return Set.of();
        }
        Set<String> stems = new LinkedHashSet<>();
        stems.add(MARK + "e" + stem(ENGLISH.get(), word));
        stems.add(MARK + "p" + stem(PORTUGUESE.get(), word));
        return stems;
    }

    /** Whether two folded words are forms of one. No stem begins with another letter than its word. */
    public static boolean alike(String one, String other) {
        return one.equals(other)
                || !one.isEmpty()
                        && other.startsWith(one.substring(0, 1))
                        && of(one).stream().anyMatch(of(other)::contains);
    }

    /** Whether each of the words is a form of one of the others. */
    public static boolean allAmong(Collection<String> words, Collection<String> others) {
        return words.stream().allMatch(word -> others.stream().anyMatch(other -> alike(word, other)));
    }

    private static String stem(SnowballStemmer stemmer, String word) {
        stemmer.setCurrent(word);
        stemmer.stem();
        return stemmer.getCurrent();
    }
}
