package tenterbook.label.rule;

/**
 * Why a line cannot be printed.
 *
 * @param found what stands in the record
 * @param rule the rule that forbids it
 * @param fix what to do next
 * @param mend where that is done
 */
public record Refusal(String found, Rule rule, String fix, Mend mend) {
    /** Which record mends it. */
    public enum Mend {
        PIECE,
        CLOTH,
        STUDIO
    }

    public Refusal {
        mend = mend == null ? Mend.PIECE : mend;
    }

    /** One that is mended in the piece's own record. */
    public Refusal(String found, Rule rule, String fix) {
        this(found, rule, fix, Mend.PIECE);
    }

    @Override
    public String toString() {
        return "%s. %s (%s). %s.".formatted(found, rule.says(), rule.citation(), fix);
    }
}
