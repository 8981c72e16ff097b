package tenterbook.search.judged;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/** A file of judged questions, and the figures of a search that answers them. */
public final class JudgedQuestions {
    private static final String COLUMNS = "question\tlanguage\tsubject\tpieces\treason";

    private final List<JudgedQuestion> all;

    private JudgedQuestions(List<JudgedQuestion> all) {
        this.all = List.copyOf(all);
    }

    /** Those that may be looked into while a search is written. */
    public static JudgedQuestions seen() {
        return resource("judged-questions.tsv");
    }

    /** Those held back; of these only the figures are for whoever writes the search. */
    public static JudgedQuestions unseen() {
        return resource("judged-questions-unseen.tsv");
    }

    private static JudgedQuestions resource(String name) {
        try (Reader in = new InputStreamReader(
                JudgedQuestions.class.getResourceAsStream("/tenterbook/search/" + name), StandardCharsets.UTF_8)) {
            return read(in);
        } catch (IOException e) {
            throw new UncheckedIOException(name, e);
        }
    }

    /** @throws IllegalArgumentException with the line that is not as expected */
    static JudgedQuestions read(Reader in) {
        List<String> lines = new BufferedReader(in)
                .lines()
                .filter(line -> !line.startsWith("#") && !line.isBlank())
                .toList();
        if (lines.isEmpty() || !lines.get(0).equals(COLUMNS)) {
            throw new IllegalArgumentException("Expected the names of the columns first: " + COLUMNS);
        }
        return new JudgedQuestions(
                lines.stream().skip(1).map(JudgedQuestion::read).toList());
    }

    public List<JudgedQuestion> all() {
        return all;
    }

    /** @param search from a question as typed to the numbers of the pieces found, first one first */
    public List<Judgement> judge(Function<String, List<String>> search) {
        return all.stream()
                .map(question -> question.judge(search.apply(question.question())))
                .toList();
    }

    /**
     * Over a number of questions.
     *
     * @param rightFirst share of answers whose first piece is a best one, 0 to 1
     * @param rightSet share of answers that hold what they should and nothing else, 0 to 1
     * @param ndcg mean normalised discounted cumulated gain of the first ten, 0 to 1
     */
    public record Figures(int questions, double rightFirst, double rightSet, double ndcg) {
        /** @throws IllegalArgumentException if there are no answers, which have no share */
        public static Figures of(List<Judgement> answers) {
            if (answers.isEmpty()) {
                throw new IllegalArgumentException("Expected at least one answer");
            }
            double count = answers.size();
            return new Figures(
                    answers.size(),
                    answers.stream().filter(Judgement::rightFirst).count() / count,
                    answers.stream().filter(Judgement::rightSet).count() / count,
                    answers.stream().mapToDouble(Judgement::ndcg).sum() / count);
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%4d  %.3f  %.3f  %.3f", questions, rightFirst, rightSet, ndcg);
        }
    }
}
