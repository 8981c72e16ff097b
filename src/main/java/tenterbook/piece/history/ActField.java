package tenterbook.piece.history;

/** What an act asks beside the pieces, the day, a note and whether it is certain. */
public enum ActField {
    /** Buyer, borrower, seller or receiver. */
    PARTY,
    UNTIL,
    PLACE,
    /** One for each piece: paid, asked, or agreed as the value. */
    PRICE,
    /** What tax was charged with the price. */
    TAX,
    /** Share of the price that the seller keeps. */
    COMMISSION,
    /** Whether the agreement is written too. */
    AGREEMENT,
    /** Photographs that the pieces show from now on. */
    PHOTOGRAPHS
}
