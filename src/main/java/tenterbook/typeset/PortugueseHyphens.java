package tenterbook.typeset;

import java.util.Set;
import java.util.stream.IntStream;

/**
 * Where a Portuguese word may be hyphenated: before the consonant, or the pair that is never parted, with which a syllable begins.
 * Two vowels are never parted, which is always allowed. Only words in lower case: names may be of another language.
 *
 * @see "Acordo Ortográfico da Língua Portuguesa, 1990, Base XX, Da divisão silábica, from memory"
 */
final class PortugueseHyphens {
    private static final int SHORTEST = 6;

    /** Letters that stay before and after a hyphen. */
    private static final int BEFORE = 2;

    private static final int AFTER = 3;
    private static final int[] NONE = {};
    private static final String VOWELS = "aeiouáâãàéêíóôõúü";
    private static final String CONSONANTS = "bcçdfghjklmnpqrstvwxyz";
    private static final Set<String> PAIRS = Set.of(
            "bl", "br", "ch", "cl", "cr", "dl", "dr", "fl", "fr", "gl", "gr", "lh", "nh", "pl", "pr", "tl", "tr", "vl",
            "vr");

    private PortugueseHyphens() {}

    /** Counts of letters before each hyphen; empty where the word is not to be hyphenated. */
    static int[] of(String word) {
        boolean lower = word.chars().allMatch(c -> vowel((char) c) || CONSONANTS.indexOf(c) >= 0);
        if (word.length() < SHORTEST || !lower) {
            return NONE;
        }
        return IntStream.rangeClosed(BEFORE, word.length() - AFTER)
                .filter(at -> syllable(word, at))
                .toArray();
    }

    private static boolean syllable(String word, int at) {
        boolean pair = PAIRS.contains(word.substring(at, at + 2));
        boolean within = PAIRS.contains(word.substring(at - 1, at + 1));
        // 'sub' before l or r may be a prefix, as in 'sub-linhar', or not, as in 'su-bli-me'.
        boolean doubtful = word.startsWith("sub") && at <= 3;
        return !vowel(word.charAt(at))
                && !within
                && !doubtful
                && vowel(word.charAt(at + (pair ? 2 : 1)))
                && word.chars().limit(at).anyMatch(c -> vowel((char) c));
    }

    private static boolean vowel(char letter) {
        return VOWELS.indexOf(letter) >= 0;
    }
}
