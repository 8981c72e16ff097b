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
    static final int PIECE_MATCHES = 16;

    /** Lowest score for a piece: without the right one in the archive, no twin of the tuning set came above 0.068. */
    static final double PIECE_SCORE = 0.072;

    /** So much higher than that of any other piece its score must then be. */
    static final double PIECE_BEFORE_NEXT = 1.1;

    /** Lowest score where another piece was compared and stays clearly behind. */
    static final double CLEAR_SCORE = 0.05;

    /** How clearly. */
    static final double CLEARLY_BEFORE_NEXT = 1.5;

    private Limits() {}
}
