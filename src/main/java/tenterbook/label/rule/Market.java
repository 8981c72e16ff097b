package tenterbook.label.rule;

/** Where a piece is to be sold. A further market is a constant here, a rule table and a column of fibre names. */
public enum Market {
    US,
    EU;

    /** The market's table of rules. */
    public RuleTable rules() {
        return RuleTable.of(this);
    }
}
