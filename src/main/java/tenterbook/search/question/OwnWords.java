package tenterbook.search.question;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The maker's own words for what the archive records, by what they mean in words that are read. */
final class OwnWords {
    static final OwnWords NONE = new OwnWords(Map.of());

    private final Map<String, String> means = new HashMap<>();

    /** @param own each word or phrase with what it means */
    OwnWords(Map<String, String> own) {
        own.forEach((word, meaning) -> means.put(WordTable.key(WordTable.SHIPPED.tokens(word)), meaning));
    }

    /** The longest that begins at a token; null where none does. */
    WordTable.@Nullable Found longest(List<Token> tokens, int from) {
        for (int end = Math.min(tokens.size(), from + WordTable.LONGEST); !means.isEmpty() && end > from; end--) {
            String key = WordTable.key(tokens.subList(from, end));
            if (!key.isEmpty() && means.containsKey(key)) {
                return new WordTable.Found(means.get(key), end);
            }
        }
        return null;
    }
}
