package tenterbook.labelling;

import java.util.List;
import tenterbook.facts.PieceColour;
import tenterbook.facts.PieceFacts;

/** The colours a person named, with names short enough to stand beside them on the narrowest tag. */
public final class TagColours {
    private static final int LONGEST_NAME = 19;

    private TagColours() {}

    /** Greatest share first; none where no photograph shows the piece in its present state. */
    public static List<PieceColour> of(PieceFacts facts) {
        return facts.namedColours().ofToday().stream()
                .map(colour -> new PieceColour(colour.colour(), colour.share(), shortName(colour), colour.role()))
                .toList();
    }

    /** The maker's name where it is short enough, else its first phrase, else plain words. */
    private static String shortName(PieceColour colour) {
        String first = colour.name().split("[,;(:]", 2)[0].strip();
        String name = colour.name().length() <= LONGEST_NAME ? colour.name() : first;
        return name.length() > LONGEST_NAME ? words(colour) : new PieceColour(colour.colour(), null, name).called();
    }

    private static String words(PieceColour colour) {
        return new PieceColour(colour.colour(), null, "").called();
    }
}
