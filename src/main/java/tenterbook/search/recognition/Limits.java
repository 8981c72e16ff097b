package tenterbook.search.recognition;

/**
 * From when on what may be said. All were fixed on the tuning set of {@code tenterbook.search.recognition.RecognitionReport}
 * (rendered pictures); what it reports is of others.
 */
final class Limits {
    /** With so many places found in both no picture of the tuning set lay on a photograph of other boards. */
    static final int STRANGERS_REACH = 5;

    /** Fewest places for a board pair. */
    static final int BOARD_MATCHES = 8;

    /** Smallest share for a board pair. */
    static final double BOARD_SHARE = 0.01;

    /** Fewest places for a piece. */
    static final int PIECE_MATCHES = 25;

    /** Smallest share for a piece. */
    static final double PIECE_SHARE = 0.16;

    /** So much larger than that of any other piece its share must be. */
    static final double PIECE_BEFORE_NEXT = 1.3;

    private Limits() {}
}
