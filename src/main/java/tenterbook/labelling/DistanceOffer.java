package tenterbook.labelling;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.care.CareLine;
import tenterbook.labelling.care.CareWords;
import tenterbook.labelling.rule.Article;
import tenterbook.labelling.rule.Component;
import tenterbook.labelling.rule.FibreLine;
import tenterbook.labelling.rule.FibreStatement;
import tenterbook.labelling.rule.LabelRefusal;
import tenterbook.labelling.rule.Market;
import tenterbook.labelling.rule.Question;
import tenterbook.labelling.rule.Rule;
import tenterbook.labelling.rule.RuleTable;
import tenterbook.piece.Piece;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * What an offer at a distance says of a piece, as text to copy: on a web page, in a letter or a catalogue. A picture belongs
 * beside it.
 *
 * @param lines as they are to stand there; empty where the market has no such rule here, or where something is refused
 * @param questions what is open about the offer, beside those on the label
 * @param refusals why there is no text
 */
public record DistanceOffer(List<String> lines, List<Question> questions, List<LabelRefusal> refusals) {
    public static DistanceOffer of(PieceFacts facts, Market market) {
        Piece piece = facts.piece();
        List<Component> cloths =
                facts.cloth().cloths().stream().map(Component::of).toList();
        RuleTable rules = market.rules().of(cloths);
        if (Stream.of("offer", "offerFibres").noneMatch(rules.rules()::containsKey)) {
            return new DistanceOffer(List.of(), List.of(), List.of());
        }
        String dyedIn = facts.origin().dyedIn();
        FibreStatement statement = FibreStatement.of(
                market,
                new Article(
                        piece.category(),
                        cloths,
                        dyedIn,
                        piece.trims(),
                        facts.studio(),
                        piece.title(),
                        piece.label().forSale("", facts.studio().selling().soldIn())));
        if (!statement.refusals().isEmpty()) {
            return new DistanceOffer(List.of(), List.of(), statement.refusals());
        }
        List<String> lines = new ArrayList<>();
        lines.add(Stream.of(
                        piece.title(),
                        piece.category() == null ? "" : piece.category().inEnglish(),
                        piece.number().value())
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", ")));
        statement.lines().stream().map(FibreLine::text).forEach(lines::add);
        rules.imported(dyedIn, cloths).map(Written::inEnglish).ifPresent(lines::add);
        CareWords.of(CareFacts.of(facts), market).lines().stream()
                .filter(line ->
                        line.about() == CareLine.About.WARNING && !line.text().equals(CareWords.NO_TEST))
                .map(CareLine::text)
                .forEach(lines::add);
        return new DistanceOffer(lines, questions(rules, piece), List.of());
    }

    private static List<Question> questions(RuleTable rules, Piece piece) {
        List<Question> questions = new ArrayList<>();
        Rule identity = rules.rules().get("offerIdentity");
        if (identity != null && piece.photos().isEmpty()) {
            questions.add(new Question(Message.of("label.offer.picture"), identity));
        }
        if (identity != null && piece.category() == null) {
            questions.add(new Question(Message.of("label.offer.type"), identity));
        }
        Rule warnings = rules.rules().get("offerWarnings");
        if (warnings != null) {
            questions.add(new Question(Message.of("label.offer.warnings"), warnings));
        }
        return questions;
    }
}
