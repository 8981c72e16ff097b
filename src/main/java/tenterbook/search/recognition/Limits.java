package tenterbook.search.recognition;

/**
 * From when on what may be said. All were fixed on the tuning set of {@code tenterbook.search.recognition.RecognitionReport}
 * (rendered pictures); what it reports is of others.
 */
final class Limits {
    /** So many places found in both are the most that pictures of other boards reached. */
    static final int STRANGERS_REACH = 9;

    /** Fewest places for a board pair. */
    static final int BOARD_MATCHES = 14;

    /** Smallest share for a board pair. */
    static final double BOARD_SHARE = 0.02;

    /** Fewest places for a piece. */
    static final int PIECE_MATCHES = 40;

    /** Smallest share for a piece. */
    static final double PIECE_SHARE = 0.16;

    /** So much larger than that of any other piece its share must be. */
    static final double PIECE_BEFORE_NEXT = 1.3;

    private Limits() {}
}
