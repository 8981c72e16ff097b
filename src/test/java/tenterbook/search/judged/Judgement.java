package tenterbook.search.judged;

import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * One answer beside what was judged. Where nothing should come, all three figures are those of a right answer if no piece
 * came but such as may come, and of a wrong one otherwise.
 *
 * @param rightFirst whether the first piece has the highest grade of the question
 * @param rightSet whether all that should come came, and nothing else but what may come
 * @param ndcg the normalised discounted cumulated gain of the first ten, 0 to 1
 */
public record Judgement(
        JudgedQuestion question, List<String> answer, boolean rightFirst, boolean rightSet, double ndcg) {
    private static final int LOOKED_AT = 10;

    static Judgement of(JudgedQuestion question, List<String> answer) {
        if (Set.copyOf(answer).size() != answer.size()) {
            throw new IllegalArgumentException("Expected each piece once in the answer: " + answer);
        }
        Set<String> asked = question.expected();
        Set<String> came = answer.stream()
                .filter(piece -> question.grades().getOrDefault(piece, -1) != 0)
                .collect(Collectors.toUnmodifiableSet());
        boolean rightSet = came.equals(asked);
        if (asked.isEmpty()) {
            return new Judgement(question, answer, rightSet, rightSet, rightSet ? 1 : 0);
        }
        int best = Collections.max(question.grades().values());
        boolean rightFirst = !answer.isEmpty() && question.grades().getOrDefault(answer.get(0), -1) == best;
        List<Integer> gains = answer.stream()
                .map(piece -> question.grades().getOrDefault(piece, 0))
                .toList();
        List<Integer> ideal = question.grades().values().stream()
                .sorted(Comparator.reverseOrder())
                .toList();
        return new Judgement(question, answer, rightFirst, rightSet, discounted(gains) / discounted(ideal));
    }

    /**
     * Discounted cumulated gain of the first ten: the grade itself is the gain, divided by the logarithm to base 2 of its rank
     * where that is above 1.
     *
     * @see "Järvelin, Kekäläinen 2002, Cumulated gain-based evaluation of IR techniques, ACM TOIS 20(4), equation 2, b = 2"
     */
    static double discounted(List<Integer> gains) {
        double sum = 0;
        for (int rank = 1; rank <= Math.min(LOOKED_AT, gains.size()); rank++) {
            sum += gains.get(rank - 1) / Math.max(1, Math.log(rank) / Math.log(2));
        }
        return sum;
    }
}
