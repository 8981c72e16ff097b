package tenterbook.label.rule;

/** Where a piece is to be sold. A further market is a constant here, a rule table and, where it has its own, fibre names. */
public enum Market {
    US,
    EU,
    /** Great Britain. */
    UK,
    /** Northern Ireland. */
    NI,
    CA,
    JP;

    /** The market's table of rules. */
    public RuleTable rules() {
        return RuleTable.of(this);
    }

    /** The country or union in plain words. */
    public String place() {
        return rules().name();
    }
}
