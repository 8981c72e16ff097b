package tenterbook.search.judged;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A question and the pieces that should come.
 *
 * @param language {@code en} or {@code pt}
 * @param subject what kind of question it is
 * @param grades by piece number, best first: 2 best, 1 should come too, 0 may come or not; none above 0 where nothing should come
 * @param reason what in the records says so
 */
public record JudgedQuestion(
        String question, String language, String subject, Map<String, Integer> grades, String reason) {

    public JudgedQuestion {
        grades = Collections.unmodifiableMap(new LinkedHashMap<>(grades));
    }

    /**
     * Reads one line of five columns; a piece without a grade is a best one.
     *
     * @throws IllegalArgumentException with the line, if a column is missing or empty, a piece named twice or a grade not 0 to 2,
     *     or if {@code -} stands beside a piece that should come
     */
    static JudgedQuestion read(String line) {
        String[] columns = line.split("\t", -1);
        if (columns.length != 5 || Arrays.stream(columns).anyMatch(String::isBlank)) {
            throw new IllegalArgumentException("Expected five filled columns: " + line);
        }
        List<String> pieces = List.of(columns[3].split(" "));
        Map<String, Integer> grades = new LinkedHashMap<>();
        for (String piece : pieces) {
            if (!piece.equals("-")) {
                String[] graded = piece.split("=", 2);
                String grade = graded.length == 1 ? "2" : graded[1];
                if (!grade.matches("[012]") || grades.put(graded[0], Integer.valueOf(grade)) != null) {
                    throw new IllegalArgumentException("Expected each piece once, with a grade 0, 1 or 2: " + line);
                }
            }
        }
        JudgedQuestion read = new JudgedQuestion(columns[0], columns[1], columns[2], grades, columns[4]);
        if (pieces.contains("-") != read.expected().isEmpty()) {
            throw new IllegalArgumentException("Expected either '-' or a piece that should come: " + line);
        }
        return read;
    }

    /** The pieces that should come. */
    public Set<String> expected() {
        return grades.keySet().stream().filter(piece -> grades.get(piece) > 0).collect(Collectors.toUnmodifiableSet());
    }

    /** @param answer numbers of pieces as the search put them, each once */
    public Judgement judge(List<String> answer) {
        return Judgement.of(this, answer);
    }
}
