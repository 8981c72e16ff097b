package tenterbook.search.recognition;

import tenterbook.measure.Threshold;

/**
 * From when on what may be said. All were fixed on the tuning set of {@code tenterbook.search.recognition.RecognitionReport}
 * (rendered pictures); what it reports is of others.
 */
final class Limits {
    /** With so many places found in both no picture of the tuning set lay on a photograph of other boards. */
    static final int STRANGERS_REACH = (int) pair(2);

    /** Fewest places for a board pair. */
    static final int BOARD_MATCHES = (int) pair(0);

    /** Smallest share for a board pair. */
    static final double BOARD_SHARE = pair(1);

    /** Fewest places for a piece. */
    static final int PIECE_MATCHES = (int) piece(0);

    /** Lowest score for a piece: a sixth above 0.0869, the highest of a twin of the tuning set without the right one in the archive. */
    static final double PIECE_SCORE = piece(1);

    /** So much higher than that of any other piece its score must then be. */
    static final double PIECE_BEFORE_NEXT = piece(2);

    /** Lowest score where another piece was compared and stays clearly behind: a sixth above 0.0479, the highest such one. */
    static final double CLEAR_SCORE = piece(3);

    /** How clearly: a sixth more than 1.49 times, by which such a one of 0.0821 was before the next. */
    static final double CLEARLY_BEFORE_NEXT = piece(4);

    private Limits() {}

    private static double pair(int place) {
        return Threshold.numbers("recognition-pair").get(place);
    }

    private static double piece(int place) {
        return Threshold.numbers("recognition-piece").get(place);
    }
}
