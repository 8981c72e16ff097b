package tenterbook.web.print;

import static tenterbook.web.page.Words.w;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tenterbook.facts.PieceReader;
import tenterbook.labelling.CareFacts;
import tenterbook.labelling.LabelKind;
import tenterbook.labelling.LabelText;
import tenterbook.labelling.PrintSettings;
import tenterbook.labelling.care.CareSymbols;
import tenterbook.ledger.Saved;
import tenterbook.piece.Piece;
import tenterbook.web.Site;
import tenterbook.web.page.Words;

/** The doubts about a batch of labels: each listed once, with the pieces it concerns. */
final class LabelQuestions {
    private static final int MOST = 100;
    private static final int MOST_NUMBERS = 12;

    private LabelQuestions() {}

    static List<String> of(List<LabelText> texts) {
        Map<String, List<String>> pieces = new LinkedHashMap<>();
        texts.forEach(text -> text.questions().stream()
                .map(Words::w)
                .distinct()
                .forEach(question -> pieces.computeIfAbsent(question, each -> new ArrayList<>())
                        .add(text.number().value())));
        List<String> questions = new ArrayList<>();
        pieces.forEach((question, numbers) -> questions.add(numbers(numbers) + ": " + question));
        return questions.subList(0, Math.min(MOST, questions.size()));
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
