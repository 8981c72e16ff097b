package tenterbook.archive.arrival;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tenterbook.ledger.Ledger;

/** Numbers of pieces that stand in file names. A number there is a hint: a file can be named wrongly, so it is proposed only. */
public final class FileNames {
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}]+");
    private static final int LONGEST = 4;
    private static final int LONGEST_NAME = 120;

    private FileNames() {}

    /**
     * The numbers in use that stand in each name as whole words: ‘v24_003 front.jpg’ holds V24-003, ‘V24-0031.jpg’ does not.
     *
     * @return by name, in the order they stand there; a name without any has an empty list
     */
    public static Map<String, List<String>> numbers(Ledger ledger, List<String> names) {
        Map<String, Set<String>> candidates = new LinkedHashMap<>();
        Set<String> all = new LinkedHashSet<>();
        for (String name : names) {
            candidates.put(name, candidates(name));
            all.addAll(candidates.get(name));
        }
        Set<String> there = ledger.records(tenterbook.archive.Kinds.PIECE, all).keySet();
        Map<String, List<String>> found = new LinkedHashMap<>();
        candidates.forEach((name, its) ->
                found.put(name, its.stream().filter(there::contains).toList()));
        return found;
    }

    /** Up to four words in a row that hold a digit, written as they stand and in capitals with hyphens. */
    static Set<String> candidates(String name) {
        String bare = (name == null ? "" : name).replaceAll("\\.[A-Za-z]{2,5}$", "");
        bare = bare.substring(0, Math.min(bare.length(), LONGEST_NAME));
        List<int[]> words = new ArrayList<>();
        for (Matcher word = WORD.matcher(bare); word.find(); ) {
            words.add(new int[] {word.start(), word.end()});
        }
        Set<String> found = new LinkedHashSet<>();
        for (int first = 0; first < words.size(); first++) {
            for (int count = Math.min(LONGEST, words.size() - first); count > 0; count--) {
                String text = bare.substring(words.get(first)[0], words.get(first + count - 1)[1]);
                if (text.chars().anyMatch(Character::isDigit)) {
                    found.add(text);
                    found.add(text.toUpperCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-"));
                }
            }
        }
        return found;
    }
}
