package tenterbook.exchange.sheet;

/**
 * What the maker chose for a whole sheet.
 *
 * @param update whether records that are there already are changed, or left
 * @param newPeople whether a person of whose name nobody is recorded becomes a new one, or the row is refused
 */
public record ImportChoices(boolean update, boolean newPeople) {
    /** As long as nothing is chosen. */
    public static final ImportChoices USUAL = new ImportChoices(true, false);
}
