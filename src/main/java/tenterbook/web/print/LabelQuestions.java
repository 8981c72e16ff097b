package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tenterbook.facts.PieceFacts;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.Answers;
import tenterbook.labelling.CareFacts;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.care.CareSymbols;
import tenterbook.labelling.rule.LabelRefusal;
import tenterbook.labelling.rule.Question;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.piece.label.RuleAnswer;
import tenterbook.web.Site;
import tenterbook.web.page.Words;

/** The doubts about a batch of labels: each listed once, with the pieces it concerns. */
public final class LabelQuestions {
    private static final int MOST = 100;
    private static final int MOST_NUMBERS = 12;

    private LabelQuestions() {}

    /**
     * An open question.
     *
     * @param text with the numbers of the pieces it concerns and its source
     * @param rule its name, for an answer
     * @param asked the question alone, for an answer
     * @param numbers of its pieces, with commas
     * @param mend where the record is that answers it; empty where it is answered in words
     * @param earlier an answer that rests on facts that have changed; null for none
     */
    public record Open(
            String text,
            String rule,
            String asked,
            String numbers,
            String mend,
            @Nullable RuleAnswer earlier) {}

    /** A question that is answered, with the numbers of its pieces. */
    public record Answered(String numbers, RuleAnswer answer) {}

    static List<Open> of(List<LabelText> texts, List<PieceFacts> facts) {
        Map<String, PieceFacts> byNumber = new HashMap<>();
        facts.forEach(each -> byNumber.put(each.piece().number().value(), each));
        Map<Question, List<String>> pieces = new LinkedHashMap<>();
        texts.forEach(text -> text.questions()
                .forEach(question -> pieces.computeIfAbsent(question, each -> new ArrayList<>())
                        .add(text.number().value())));
        return pieces.entrySet().stream()
                .limit(MOST)
                .map(each -> {
                    Question question = each.getKey();
                    String first = each.getValue().get(0);
                    return new Open(
                            numbers(each.getValue()) + ": " + w(question),
                            question.rule().id(),
                            question.asks().inEnglish(),
                            String.join(",", each.getValue()),
                            mend(question, first),
                            Answers.given(question, byNumber.get(first)).orElse(null));
                })
                .toList();
    }

    private static String mend(Question question, String number) {
        return question.mend() == null
                ? ""
                : question.mend() == LabelRefusal.Mend.STUDIO ? "/studio" : "/pieces/" + number + "/edit";
    }

    static List<Answered> answered(List<LabelText> texts) {
        Map<RuleAnswer, List<String>> pieces = new LinkedHashMap<>();
        texts.forEach(text -> text.answers()
                .forEach(answer -> pieces.computeIfAbsent(answer, each -> new ArrayList<>())
                        .add(text.number().value())));
        return pieces.entrySet().stream()
                .limit(MOST)
                .map(each -> new Answered(numbers(each.getValue()), each.getKey()))
                .toList();
    }

    /** A remark where a price is to be printed and a piece has none recorded; empty where all have. */
    static List<String> withoutPrice(List<Saved<Piece>> pieces, PrintSettings request) {
        if (request.kind() != LabelKind.HANG_TAG || !request.content().priceShown()) {
            return List.of();
        }
        List<String> without = pieces.stream()
                .map(Saved::record)
                .filter(piece -> piece.price() == null)
                .map(piece -> piece.number().value())
                .toList();
        return without.isEmpty() ? List.of() : List.of(numbers(without) + ": " + w("print.no-price"));
    }

    /** Why no care symbol can be drawn for the first piece, row by row; empty where one can, or none is asked for. */
    static List<String> noSymbols(Site site, List<Saved<Piece>> pieces, PrintSettings request) {
        if (pieces.isEmpty() || !request.content().careSymbols()) {
            return List.of();
        }
        CareSymbols symbols = CareSymbols.of(
                CareFacts.of(PieceReader.of(site.archive(), pieces.get(0).record())), request.market());
        return symbols.marks().isEmpty() ? symbols.gaps().stream().map(Words::w).toList() : List.of();
    }

    private static String numbers(List<String> numbers) {
        return numbers.size() <= MOST_NUMBERS
                ? String.join(", ", numbers)
                : w(
                        "print.numbers-and-more",
                        "numbers",
                        String.join(", ", numbers.subList(0, MOST_NUMBERS)),
                        "count",
                        numbers.size() - MOST_NUMBERS);
    }
}
