package tenterbook.colour.target;

import java.util.List;
import tenterbook.colour.palette.Region;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.words.Message;

/**
 * The four corners of a card in the upright picture, found or marked by hand, one after the other around it.
 *
 * @param corners four, in parts of the picture's width and height
 */
public record CardOutline(List<Corner> corners) {
    /** @throws CardRefused if they are not four corners of a convex shape */
    public CardOutline {
        corners = List.copyOf(corners);
        if (corners.size() != 4 || !convex(corners)) {
            throw new CardRefused(
                    corners.size() == 4
                            ? Message.of("card.crossed")
                            : Message.of("card.not-four-corners", "count", corners.size()));
        }
    }

    private static boolean convex(List<Corner> corners) {
        double turned = 0;
        for (int i = 0; i < 4; i++) {
            Corner a = corners.get(i);
            Corner b = corners.get((i + 1) % 4);
            Corner c = corners.get((i + 2) % 4);
            double turn = Math.signum((b.x() - a.x()) * (c.y() - b.y()) - (b.y() - a.y()) * (c.x() - b.x()));
            if (turn == 0 || turned != 0 && turn != turned) {
                return false;
            }
            turned = turn;
        }
        return true;
    }

    /** The corners clockwise. */
    List<Corner> clockwise() {
        double area = 0;
        for (int i = 0; i < 4; i++) {
            Corner here = corners.get(i);
            Corner next = corners.get((i + 1) % 4);
            area += here.x() * next.y() - next.x() * here.y();
        }
        return area > 0 ? corners : List.of(corners.get(3), corners.get(2), corners.get(1), corners.get(0));
    }

    /** The whole card. */
    public Region whole() {
        return new Region(corners);
    }

    /** The card without its outer tenth on each side, where its edge, a shadow or a finger may be. */
    public Region inner() {
        double x = corners.stream().mapToDouble(Corner::x).sum() / 4;
        double y = corners.stream().mapToDouble(Corner::y).sum() / 4;
        return new Region(corners.stream()
                .map(c -> new Corner(x + 0.8 * (c.x() - x), y + 0.8 * (c.y() - y)))
                .toList());
    }
}
