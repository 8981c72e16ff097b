package tenterbook.imaging.cloth;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import tenterbook.colour.palette.Region.Corner;
import tenterbook.words.Message;
import tenterbook.words.Worded;

/**
 * Where the cloth is in a photograph: as a person drew it, or what the program takes for it.
 *
 * @param edge who says so, or why there is no outline
 * @param corners of its outline, in parts of the width and height of the upright picture; none where the edge was not found
 * @param measured the figure that decided, for whoever wants to know; what it is depends on {@code edge}
 */
public record ClothOutline(Edge edge, List<Corner> corners, double measured) {
    /** What came of looking for the edge, and the reason where it was not found. */
    public enum Edge implements Worded {
        /** A person drew it; nothing is measured. */
        DRAWN,
        /** The whole edge that is in the picture was found; measured is how steady it is, see {@link #UNSTEADY}. */
        FOUND,
        /** The picture shows nothing but cloth; measured is how alike its frame and its middle are, 0 to 1. */
        FILLS_THE_PICTURE,
        /** Nothing, or next to nothing, stands out; measured is the part of the picture that does. */
        NOTHING_STANDS_OUT,
        /** Two ways of weighing colour against shape gave different outlines; measured is their overlap, 0 to 1. */
        UNSTEADY,
        /** Part of the edge has no change of colour; measured is the part that has, 0 to 1. */
        FAINT,
        /** The outline is too ragged for a cloth; measured is its length beside that of its hull. */
        RAGGED,
        /** It fills too little of its hull, as several things do that lie together; measured is the part it fills. */
        IN_PIECES,
        /** Other things lie about it that are as unlike the backdrop; measured is their part of the picture. */
        OTHER_THINGS,
        /** The photograph cannot be shown, or its file is gone. */
        NO_PICTURE,
        /** The program has not looked yet. */
        NOT_YET;

        /** Whether there is an outline. */
        public boolean found() {
            return this == DRAWN || this == FOUND || this == FILLS_THE_PICTURE;
        }

        @Override
        public Message word() {
            return Message.of("photo.edge." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
    }

    public ClothOutline {
        Objects.requireNonNull(edge, "edge");
        corners = List.copyOf(corners);
        if (edge.found() == corners.isEmpty()) {
            throw new IllegalStateException("An outline has corners where its edge was found, and only there; found: "
                    + corners.size() + " with " + edge);
        }
    }

    public static ClothOutline drawn(List<Corner> corners) {
        return new ClothOutline(Edge.DRAWN, corners, 0);
    }

    /** Of a photograph that cannot be shown. */
    public static ClothOutline unseen() {
        return new ClothOutline(Edge.NO_PICTURE, List.of(), 0);
    }
}
