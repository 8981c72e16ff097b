package tenterbook.labelling.rule;

import tenterbook.words.Conventions;
import tenterbook.words.Written;

/** Words of a rule table, always in the table's own language. */
public record TableText(String text) implements Written {
    @Override
    public String in(Conventions conventions) {
        return text;
    }
}
