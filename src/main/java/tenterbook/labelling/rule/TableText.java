package tenterbook.labelling.rule;

import tenterbook.words.Conventions;
import tenterbook.words.Written;

/** Words that stand in a rule table, in the table's own language whoever reads them. */
public record TableText(String text) implements Written {
    @Override
    public String in(Conventions conventions) {
        return text;
    }
}
