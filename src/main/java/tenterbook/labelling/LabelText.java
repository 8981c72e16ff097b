package tenterbook.labelling;

import java.util.ArrayList;
import java.util.List;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceFacts;
import tenterbook.labelling.rule.CodedChoice;
import tenterbook.labelling.rule.Question;
import tenterbook.piece.PieceNumber;
import tenterbook.piece.label.RuleAnswer;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/**
 * The words of one label: every line exactly as printed, in order, with the rule or record it is based on. Stored when a label
 * is issued, so that it can be set again without evaluating the rules.
 *
 * @param rules versions of the rule tables used
 * @param template version of the words and layout
 * @param code contents of the QR code; empty for none
 * @param colours named colours of the band; empty for none
 * @param questions doubts that do not stop the label and are not answered; shown to the maker, never printed
 * @param answers to other doubts, as they hold now; kept with the paper, never printed
 */
public record LabelText(
        PieceNumber number,
        PrintSettings request,
        List<String> rules,
        String template,
        List<Line> lines,
        String code,
        List<PieceColour> colours,
        List<Question> questions,
        List<RuleAnswer> answers) {
    /** Which part of the label a line is. */
    public enum Part implements CodedChoice, Worded {
        MAKER("maker"),
        PLACE("place"),
        TITLE("title"),
        OTHER_TITLE("other-title"),
        NUMBER("number"),
        DATE("date"),
        SIZE("size"),
        MATERIAL("material"),
        CONTENT("content"),
        ORIGIN("origin"),
        PARTICULARS("particulars"),
        DYES("dyes"),
        MADE("made"),
        CONDITION("condition"),
        ADVICE("advice"),
        WORDS("words"),
        CARE_SYMBOL("care-symbol"),
        CARE("care"),
        COLOUR("colour"),
        PRICE("price"),
        /** Where the piece is kept. */
        STORED("stored");

        private final String code;

        Part(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }

        @Override
        public Message word() {
            return Message.of("label.of." + code);
        }
    }

    /**
     * One line.
     *
     * @param basis the citation or the record it is based on; empty for a plain fact of the piece
     */
    public record Line(Part part, String text, String basis) {}

    public LabelText {
        rules = List.copyOf(rules);
        lines = List.copyOf(lines);
        colours = List.copyOf(colours);
        questions = List.copyOf(questions);
        answers = List.copyOf(answers);
    }

    /**
     * The words of a label.
     *
     * @throws LabelBlocked where a rule forbids it, with every reason
     */
    public static LabelText of(PieceFacts facts, PrintSettings request) {
        return new LabelWords(facts, request, request.kind().hung() ? TagColours.of(facts) : List.of()).text();
    }

    /** The words of several labels; the exception names all blocked pieces. */
    public static List<LabelText> of(List<PieceFacts> pieces, PrintSettings request) {
        List<LabelText> texts = new ArrayList<>();
        List<LabelBlocked.Piece> blocked = new ArrayList<>();
        for (PieceFacts facts : pieces) {
            try {
                texts.add(of(facts, request));
            } catch (LabelBlocked e) {
                blocked.addAll(e.pieces());
            }
        }
        if (!blocked.isEmpty()) {
            throw new LabelBlocked(blocked);
        }
        return texts;
    }

    /** The texts of one part, in order. */
    public List<String> of(Part part) {
        return lines.stream().filter(l -> l.part == part).map(Line::text).toList();
    }
}
