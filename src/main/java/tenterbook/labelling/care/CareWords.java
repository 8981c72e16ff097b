package tenterbook.labelling.care;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.labelling.rule.LabelRefusal;
import tenterbook.labelling.rule.Market;
import tenterbook.labelling.rule.Question;
import tenterbook.words.Message;

/**
 * Care in words, from recorded tests alone. A treatment is offered only where a test of it passed, and forbidden only where a
 * test of it failed; neither is inferred from the other. Temperatures are the highest tested. Common practice for the materials
 * is asked about and never printed.
 *
 * @param lines as printed, in the order of ISO 3758, warnings last; never empty
 * @param questions what the tests leave open
 * @param missing the refusal of a label that must state care and cannot; null for none
 */
public record CareWords(
        List<CareLine> lines,
        List<Question> questions,
        @Nullable LabelRefusal missing) {
    /** What stands on paper where no judged test is on record. */
    public static final String NO_TEST = Message.of("care.no-test").inEnglish();

    public CareWords {
        lines = List.copyOf(lines);
        questions = List.copyOf(questions);
    }

    public static CareWords of(CareCase about, Market market) {
        return new CareWriter(about, market.rules()).words();
    }
}
