package tenterbook.labelling;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Sentences of advice that differ in their wording alone: 'Keep out of strong sun.' says what 'Keep out of strong light.' says.
 * Words of degree do not count, since the more general sentence holds for both.
 */
final class SameAdvice {
    private static final Set<String> WORDS_OF_DEGREE =
            Set.of("a", "all", "always", "any", "bright", "direct", "full", "please", "strong", "the", "very");

    private SameAdvice() {}

    /** The typed sentences without those that another line already states. */
    static String without(String typed, List<String> stated) {
        Set<String> there = stated.stream()
                .flatMap(SameAdvice::sentences)
                .map(SameAdvice::meaning)
                .collect(Collectors.toSet());
        return sentences(typed)
                .filter(sentence -> !there.contains(meaning(sentence)))
                .collect(Collectors.joining(" "));
    }

    private static Stream<String> sentences(String text) {
        return Arrays.stream(text.strip().split("(?<=[.!?])\\s+")).filter(sentence -> !sentence.isBlank());
    }

    private static String meaning(String sentence) {
        String plain = sentence.toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\d ]", " ")
                .replaceAll("\\b(sun ?light|sun ?shine|sun|day ?light)\\b", "light")
                .replaceAll("\\b(keep (it )?(away from|out of|from)|avoid|no)\\b", "not");
        return Arrays.stream(plain.strip().split(" +"))
                .filter(word -> !WORDS_OF_DEGREE.contains(word))
                .collect(Collectors.joining(" "));
    }
}
