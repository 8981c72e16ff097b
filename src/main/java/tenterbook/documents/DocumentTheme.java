package tenterbook.documents;

/** How a document is set: for reading in the hand, at the bench, on a wall, on a card. */
public enum DocumentTheme {
    /** For A4 and Letter: text in a wide column, names of facts in a narrow one beside it. */
    SHEET,
    /** Large type and room to write, to be read from an arm's length with wet hands. */
    BENCH,
    /** To be read from a step away; must fit on one page, and the title is never under 18 points. */
    WALL,
    /** Small type on a card. */
    CARD
}
