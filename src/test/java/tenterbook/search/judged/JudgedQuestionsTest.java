package tenterbook.search.judged;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.io.StringReader;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tenterbook.search.judged.JudgedQuestions.Figures;

class JudgedQuestionsTest {
    private static final JudgedQuestion QUESTION = question("A=2 B=1 C=2 M=0");
    private static final JudgedQuestion NOTHING = question("- M=0");

    private static JudgedQuestion question(String pieces) {
        return JudgedQuestion.read("six dips\ten\tdips\t" + pieces + "\tby count");
    }

    /** By hand: (1 + 0 + 2 / log2 3) / (2 + 2 + 1 / log2 3) = 2.26186 / 4.63093. */
    @Test
    void aHalfRightAnswerHasTheFiguresWorkedByHand() {
        Judgement answer = QUESTION.judge(List.of("B", "X", "A"));
        assertThat(answer.rightFirst()).isFalse();
        assertThat(answer.rightSet()).isFalse();
        assertThat(answer.ndcg()).isCloseTo(0.48842, within(1e-5));
    }

    @Test
    void theBestFirstAndAllOfThemIsRightWhicheverBestComesFirst() {
        for (List<String> right : List.of(List.of("A", "C", "B"), List.of("C", "A", "B"))) {
            assertThat(QUESTION.judge(right)).isEqualTo(new Judgement(QUESTION, right, true, true, 1));
        }
    }

    /** By hand: (2 + 2 + 0 + 1 / log2 4) / (2 + 2 + 1 / log2 3) = 4.5 / 4.63093. */
    @Test
    void aPieceThatMayComeCountsForNothingAndLeavesTheSetRight() {
        Judgement answer = QUESTION.judge(List.of("A", "C", "M", "B"));
        assertThat(answer.rightSet()).isTrue();
        assertThat(answer.ndcg()).isCloseTo(0.97173, within(1e-5));
        assertThat(QUESTION.judge(List.of("M", "A", "C", "B")).rightFirst()).isFalse();
    }

    @Test
    void onePieceTooManyOrTooFewIsNotTheSet() {
        assertThat(QUESTION.judge(List.of("A", "C", "B", "X")).rightSet()).isFalse();
        assertThat(QUESTION.judge(List.of("A", "C")).rightSet()).isFalse();
    }

    @Test
    void noAnswerIsWrongWhereSomethingShouldCome() {
        assertThat(QUESTION.judge(List.of())).isEqualTo(new Judgement(QUESTION, List.of(), false, false, 0));
    }

    @Test
    void whereNothingShouldComeOnlyNothingOrWhatMayComeIsRight() {
        for (List<String> right : List.of(List.<String>of(), List.of("M"))) {
            assertThat(NOTHING.judge(right)).isEqualTo(new Judgement(NOTHING, right, true, true, 1));
        }
        List<String> wrong = List.of("M", "A");
        assertThat(NOTHING.judge(wrong)).isEqualTo(new Judgement(NOTHING, wrong, false, false, 0));
    }

    @Test
    void theFirstBestIsTheHighestGradeOfItsQuestion() {
        assertThat(question("A=1 B=1").judge(List.of("B")).rightFirst()).isTrue();
    }

    @Test
    void whatComesAfterTheTenthCountsNothing() {
        JudgedQuestion one = question("A");
        List<String> nine = List.of("1", "2", "3", "4", "5", "6", "7", "8", "9");
        assertThat(one.judge(Stream.concat(nine.stream(), Stream.of("A")).toList())
                        .ndcg())
                .isCloseTo(0.30103, within(1e-5));
        assertThat(one.judge(Stream.concat(nine.stream(), Stream.of("10", "A")).toList())
                        .ndcg())
                .isZero();
    }

    /** The gains, discounted sums and ideal order worked in Järvelin and Kekäläinen 2002, section 2, to two decimals. */
    @Test
    void theDiscountedGainIsThatOfThePublishedExample() {
        List<Integer> gains = List.of(3, 2, 3, 0, 0, 1, 2, 2, 3, 0);
        double[] published = {3, 5, 6.89, 6.89, 6.89, 7.28, 7.99, 8.66, 9.61, 9.61};
        for (int rank = 1; rank <= published.length; rank++) {
            assertThat(Judgement.discounted(gains.subList(0, rank)))
                    .as("rank " + rank)
                    .isCloseTo(published[rank - 1], within(0.005));
        }
        assertThat(Judgement.discounted(List.of(3, 3, 3, 2, 2, 2, 1, 1, 1, 1, 0)))
                .isCloseTo(11.83, within(0.005));
    }

    @Test
    void sharesAndMeanAreOverAllQuestions() {
        Figures figures = Figures.of(List.of(
                QUESTION.judge(List.of("A", "C", "B")),
                QUESTION.judge(List.of("A", "C", "M", "B", "X")),
                NOTHING.judge(List.of("A")),
                NOTHING.judge(List.of())));
        assertThat(figures.questions()).isEqualTo(4);
        assertThat(figures.rightFirst()).isEqualTo(0.75);
        assertThat(figures.rightSet()).isEqualTo(0.5);
        assertThat(figures.ndcg()).isCloseTo((1 + 0.97173 + 0 + 1) / 4, within(1e-5));
        assertThatThrownBy(() -> Figures.of(List.of())).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void anAnswerMayNotNameAPieceTwice() {
        assertThatThrownBy(() -> QUESTION.judge(List.of("A", "A"))).hasMessageContaining("[A, A]");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "q\ten\tdips\tA",
                "q\ten\tdips\tA=3\tr",
                "q\ten\tdips\tA A\tr",
                "q\ten\tdips\t- A\tr",
                "q\ten\tdips\tA=0\tr"
            })
    void aLineThatCannotBeMeantIsNamed(String line) {
        assertThatThrownBy(() -> JudgedQuestions.read(
                        new StringReader("# note\nquestion\tlanguage\tsubject\tpieces\treason\n" + line)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(line);
    }

    @Test
    void everyJudgedPieceIsInTheSampleArchive() throws IOException {
        Set<String> pieces = new HashSet<>();
        new ObjectMapper()
                .readTree(new File("sample-archive/data/records/piece.json"))
                .forEach(piece -> pieces.add(piece.get("number").textValue()));
        for (JudgedQuestion each : both().toList()) {
            assertThat(pieces).as(each.question()).containsAll(each.grades().keySet());
        }
    }

    @Test
    void noQuestionIsAskedTwiceAndBothLanguagesAndAllSubjectsAreInBothFiles() {
        List<String> typed =
                both().map(each -> each.question().toLowerCase(Locale.ROOT)).toList();
        assertThat(typed).hasSizeGreaterThanOrEqualTo(120).doesNotHaveDuplicates();
        assertThat(by(JudgedQuestions.unseen()).keySet())
                .isEqualTo(by(JudgedQuestions.seen()).keySet())
                .hasSize(19);
        for (JudgedQuestions file : List.of(JudgedQuestions.seen(), JudgedQuestions.unseen())) {
            assertThat(file.all().stream().map(JudgedQuestion::language))
                    .contains("en", "pt")
                    .isSubsetOf("en", "pt");
            assertThat(Collections.min(by(file).values())).isGreaterThanOrEqualTo(3);
        }
    }

    private static Stream<JudgedQuestion> both() {
        return Stream.concat(JudgedQuestions.seen().all().stream(), JudgedQuestions.unseen().all().stream());
    }

    private static Map<String, Long> by(JudgedQuestions file) {
        return file.all().stream().collect(Collectors.groupingBy(JudgedQuestion::subject, Collectors.counting()));
    }
}
