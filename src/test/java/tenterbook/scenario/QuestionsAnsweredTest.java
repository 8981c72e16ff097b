package tenterbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tenterbook.search.judged.JudgedQuestion;
import tenterbook.search.judged.JudgedQuestions;
import tenterbook.search.judged.JudgedQuestions.Figures;
import tenterbook.search.judged.Judgement;

/**
 * How well the search answers the judged questions on the sample archive. They were written before the reader of questions, by
 * somebody else; of those held back only figures are printed, so that whoever writes the search does not come to know them.
 */
class QuestionsAnsweredTest {
    /** The day from which the questions count a relative time. */
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-11-28T12:00:00Z"), ZoneOffset.UTC);

    private static final int WORST = 10;

    /** More than the sample archive has pieces, so that one page holds every answer whole. */
    private static final int PAGE = 100;

    @TempDir
    Path folder;

    @Test
    void nineOfTenQuestionsAreAnsweredAndMostOfThoseNeverSeen() {
        try (SampleStudio studio = SampleStudio.open(folder, CLOCK)) {
            Client client = new Client(studio.wiring().port());
            List<Judgement> seen = JudgedQuestions.seen().judge(question -> found(client, question));
            List<Judgement> unseen = JudgedQuestions.unseen().judge(question -> found(client, question));
            print("judged-questions.tsv", seen);
            worst(seen);
            print("judged-questions-unseen.tsv", unseen);
            Figures known = Figures.of(seen);
            assertThat(known.rightFirst()).as("right first").isGreaterThanOrEqualTo(0.93);
            assertThat(known.rightSet()).as("right set").isGreaterThanOrEqualTo(0.9);
            assertThat(known.ndcg()).as("nDCG at 10").isGreaterThanOrEqualTo(0.97);
            Figures held = Figures.of(unseen);
            assertThat(held.rightFirst()).as("right first of those held back").isGreaterThanOrEqualTo(0.88);
            assertThat(held.rightSet()).as("right set of those held back").isGreaterThanOrEqualTo(0.75);
            assertThat(held.ndcg()).as("nDCG at 10 of those held back").isGreaterThanOrEqualTo(0.86);
        }
    }

    private static List<String> found(Client client, String question) {
        try {
            Answer answer = client.get(
                    "/api/pieces?size=" + PAGE + "&q=" + URLEncoder.encode(question, StandardCharsets.UTF_8));
            assertThat(answer.status()).as("status of the answer").isEqualTo(200);
            List<String> numbers = new ArrayList<>();
            answer.json()
                    .get("pieces")
                    .forEach(piece -> numbers.add(piece.get("number").textValue()));
            assertThat(numbers).hasSize(answer.json().get("total").intValue());
            return numbers;
        } catch (IOException e) {
            throw new UncheckedIOException("asking the search", e);
        }
    }

    private static void print(String file, List<Judgement> answers) {
        System.out.printf("%n%-28s%4s  %5s  %5s  %s%n", file, "n", "first", "set", "nDCG at 10");
        line("all", Figures.of(answers));
        by(answers, JudgedQuestion::language);
        by(answers, JudgedQuestion::subject);
    }

    private static void by(List<Judgement> answers, Function<JudgedQuestion, String> part) {
        var parts = answers.stream().collect(Collectors.groupingBy(answer -> part.apply(answer.question())));
        new TreeSet<>(parts.keySet()).forEach(name -> line(name, Figures.of(parts.get(name))));
    }

    private static void line(String name, Figures figures) {
        System.out.printf("%-28s%s%n", name, figures);
    }

    /** The lowest gain first; of the same gain those with more pieces that should not have come. */
    private static void worst(List<Judgement> answers) {
        System.out.printf("%nThe %d worst: what was asked, what came first, what should have come%n", WORST);
        answers.stream()
                .sorted(Comparator.comparingDouble(Judgement::ndcg)
                        .thenComparing(answer -> -answer.answer().size()))
                .limit(WORST)
                .forEach(answer -> System.out.printf(
                        "%-28s %2d came %s; expected %s%n",
                        answer.question().question(),
                        answer.answer().size(),
                        answer.answer().stream().limit(3).toList(),
                        new TreeSet<>(answer.question().expected())));
    }
}
