package tenterbook.search.find;

import java.util.List;
import tenterbook.colour.space.Lab;
import tenterbook.search.index.PieceCard;

/**
 * One piece found.
 *
 * @param distance ΔE00 from the colour asked for to the piece's nearest colour; null where no colour was asked for
 * @param share of the piece within the tolerance, 0 to 1; null where no colour was asked for or no share was measured
 * @param nearest the piece's nearest colour; null where no colour was asked for
 * @param why where the words were found, as in 'lesson: seal the beak'; empty where the card itself shows it
 */
public record Hit(PieceCard card, Double distance, Double share, Lab nearest, List<String> why) {
    public Hit {
        why = List.copyOf(why);
    }
}
