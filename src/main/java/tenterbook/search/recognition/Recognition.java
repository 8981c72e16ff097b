package tenterbook.search.recognition;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tenterbook.measure.Digest;
import tenterbook.piece.PieceNumber;
import tenterbook.recipe.BoardUse;

/**
 * What a photograph shows, as far as other photographs in the archive show it. It is likeness and no proof: nobody is told who
 * made a piece.
 *
 * @param level how much may be said
 * @param pieces the most alike first, one line for each piece; where the piece is certain enough, the first is it, otherwise they
 *     are what it may be
 * @param boards board pairs in their states, the most alike first; none where unknown
 * @param compared how many photographs were looked at closely
 * @param waiting how many photographs of the archive were not looked at yet and could not be found
 */
public record Recognition(Level level, List<Candidate> pieces, List<BoardCandidate> boards, int compared, int waiting) {
    /** How much may be said. */
    public enum Level {
        /** It is the first of the pieces. */
        THIS_PIECE,
        /** It was made with the first of the board pairs; which piece it is, is not certain. */
        THIS_BOARD_PAIR,
        UNKNOWN
    }

    public Recognition {
        pieces = List.copyOf(pieces);
        boards = List.copyOf(boards);
    }

    /**
     * A piece, by that of its photographs which is most like the picture.
     *
     * @param boards used up to the state that the photograph shows
     */
    public record Candidate(Digest photo, PieceNumber piece, int state, List<BoardUse> boards, Evidence evidence) {
        public Candidate {
            boards = List.copyOf(boards);
        }
    }

    /** A board pair in a state, by the photograph of a piece made with it which is most like the picture. */
    public record BoardCandidate(BoardUse board, Candidate shownBy) {}

    /**
     * Why a photograph is taken for one of the same cloth, or of the same boards.
     *
     * @param mirrored whether the picture's mirror image lies on the photograph, as layers that lay on each other do
     * @param onPhotograph from places of the picture as given to places of the photograph, both in parts of width and height
     * @param places found in both
     * @param visible so many distinctive places of the part that both show could have been found at most
     * @param share of those, found in both; counted so that few places weigh less
     * @param score the share, less where the places lie off or are uneven; candidates stand in its order
     * @param residualPixels root mean square distance of the places from where they should lie, on a photograph of 1,024 pixels
     * @param residualMm the same in millimetres of cloth; null where the scale of the photograph is not known
     */
    public record Evidence(
            boolean mirrored,
            Homography onPhotograph,
            List<Place> places,
            int visible,
            double share,
            double score,
            double residualPixels,
            @Nullable Double residualMm) {
        public Evidence {
            places = List.copyOf(places);
        }

        public int matches() {
            return places.size();
        }

        /** How many times as many places as known strangers stay below. */
        public double timesStrangers() {
            return (double) matches() / Limits.STRANGERS_REACH;
        }
    }

    /** A place on the picture and the same on the photograph, in parts of width and height. */
    public record Place(double x, double y, double photoX, double photoY) {}
}
