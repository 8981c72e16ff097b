package tenterbook.labelling;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tenterbook.archive.record.MaterialRecords;
import tenterbook.archive.record.PieceRecord;
import tenterbook.archive.record.StudioRecords;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.rule.Question;
import tenterbook.ledger.revision.Canonical;
import tenterbook.measure.Digest;
import tenterbook.piece.label.RuleAnswer;

/**
 * Which questions of the rules the maker has answered. An answer holds while the facts that were asked about stay as they were;
 * where they change the question is asked again. A refusal has no answer, and neither has a question for what a rule requires.
 */
public final class Answers {
    /** Rules that ask of the studio, not of a piece. */
    private static final Set<String> OF_STUDIO = Set.of("retained", "follows", "careSymbolShapes", "careSymbolMarks");

    private static final Set<String> OF_ORIGIN = Set.of("origin", "offer", "claim.made-in");

    /**
     * Questions sorted.
     *
     * @param open in the order asked
     * @param answers that hold, in the order asked
     */
    record Sorted(List<Question> open, List<RuleAnswer> answers) {}

    private Answers() {}

    static Sorted sorted(List<Question> questions, PieceFacts facts) {
        List<Question> open = new ArrayList<>();
        List<RuleAnswer> answers = new ArrayList<>();
        for (Question question : questions) {
            Optional<RuleAnswer> answer = given(question, facts).filter(each -> holds(each, facts));
            answer.ifPresentOrElse(answers::add, () -> open.add(question));
        }
        return new Sorted(open, answers);
    }

    /** The answer to this question, which may rest on facts that have changed. */
    public static Optional<RuleAnswer> given(Question question, PieceFacts facts) {
        if (question.mend() != null) {
            return Optional.empty();
        }
        List<RuleAnswer> all = Stream.concat(facts.piece().label().answers().stream(), ofStudio(facts))
                .toList();
        if (all.isEmpty()) {
            return Optional.empty();
        }
        String asked = question.asks().inEnglish();
        return all.stream()
                .filter(each ->
                        each.rule().equals(question.rule().id()) && each.asked().equals(asked))
                .findFirst();
    }

    private static Stream<RuleAnswer> ofStudio(PieceFacts facts) {
        return facts.studio().selling().answers().stream();
    }

    /** Whether the facts are still those that it rests on. */
    public static boolean holds(RuleAnswer answer, PieceFacts facts) {
        return answer.facts().equals(facts(answer.rule(), answer.asked(), facts));
    }

    /** Whether a rule asks of the studio, so that one answer serves every piece. */
    public static boolean ofStudio(String rule) {
        return OF_STUDIO.contains(rule);
    }

    /** The question and the facts that its answer rests on, in stored form. */
    public static Digest facts(String rule, String asked, PieceFacts facts) {
        ArrayNode all = JsonNodeFactory.instance.arrayNode().add(rule).add(asked);
        if (!ofStudio(rule)) {
            if (rule.equals("language")) {
                all.add(StudioRecords.STUDIO.toJson(facts.studio()).retain("names", "soldIn"));
                all.add(PieceRecord.PIECE.toJson(facts.piece()).retain("soldIn"));
            } else {
                piece(rule, facts, all);
            }
        }
        return Digest.of(Canonical.json(all).getBytes(StandardCharsets.UTF_8));
    }

    private static void piece(String rule, PieceFacts facts, ArrayNode all) {
        boolean care = rule.startsWith("care") || rule.startsWith("silent") || rule.equals("practice");
        List<String> ofPiece = new ArrayList<>(List.of("category", "trims", "components", "madeToOrder"));
        List<String> ofCloth = new ArrayList<>(List.of("name", "content", "contentEvidence"));
        if (care) {
            ofPiece.add("tests");
            ofCloth.addAll(List.of("weave", "finish"));
        }
        if (OF_ORIGIN.contains(rule)) {
            all.add(facts.origin().dyedIn());
            ofCloth.add("wovenIn");
        }
        if (care || rule.startsWith("claim.") || rule.startsWith("chemical.")) {
            facts.lotsUsed().forEach(lot -> all.add(lot.id().value() + " " + lot.name()));
        }
        all.add(PieceRecord.PIECE.toJson(facts.piece()).retain(ofPiece));
        facts.cloth()
                .cloths()
                .forEach(cloth -> all.add(MaterialRecords.CLOTH.toJson(cloth).retain(ofCloth)));
    }
}
