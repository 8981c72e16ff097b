package tenterbook.labelling.rule;

import tenterbook.words.Conventions;
import tenterbook.words.Message;
import tenterbook.words.Written;

/**
 * Why a line cannot be printed.
 *
 * @param found what the record has
 * @param rule the rule that forbids it
 * @param fix what to do next
 * @param mend which record to change
 */
public record LabelRefusal(Written found, Rule rule, Written fix, Mend mend) implements Written {
    /** Which record to change. */
    public enum Mend {
        PIECE,
        CLOTH,
        STUDIO
    }

    public LabelRefusal {
        mend = mend == null ? Mend.PIECE : mend;
    }

    /** A refusal to be corrected in the piece's own record. */
    public LabelRefusal(Written found, Rule rule, Written fix) {
        this(found, rule, fix, Mend.PIECE);
    }

    @Override
    public String in(Conventions conventions) {
        return Message.of("rules.refusal", "found", found, "says", rule.says(), "citation", rule.citation(), "fix", fix)
                .in(conventions);
    }

    @Override
    public String toString() {
        return inEnglish();
    }
}
